import { DENSITY_EXPONENTS, type DensityExponents } from '../../shared/combustion/density-exponents.ts';
import { type AirSwing, estimateExponent, type FleetExponent } from '../../shared/combustion/fleet-exponent.ts';
import { exponentsSchema } from '../../shared/schemas/exponents.ts';
import { numberColumn, textColumn } from '../../shared/table/columns.ts';
import { tableOf } from '../../shared/table/schema.ts';
import type { Column, Table } from '../../shared/table/table.ts';
import type { DeriveParameters } from './parameters.ts';

/** The exponents of one behavior of burners: what is used, where it is from, and what the fleet's readings say. */
export interface ExponentsUsed {
  readonly behavior: string;
  readonly used: DensityExponents;
  readonly source: 'default' | 'edited' | 'fleet';
  readonly fleet: FleetExponent;
}

const BEHAVIORS = Object.keys(DENSITY_EXPONENTS) as (keyof typeof DENSITY_EXPONENTS)[];
/** Of an air temperature about 15 °C, by the class's standard uncertainty. */
const USUAL_AIR_K = 288;

/** What the fleet says of every behavior, and with the source `fleet` what it settles: the exponent over temperature. */
export function exponentsUsed(
  { exponents, exponentSource, classes, defaultClass }: DeriveParameters,
  swings: ReadonlyMap<string, readonly AirSwing[]>,
): readonly ExponentsUsed[] {
  const airNoise = classes[defaultClass].air_C.absolute / USUAL_AIR_K;
  return BEHAVIORS.map((behavior) => {
    const fleet = estimateExponent(swings.get(behavior) ?? [], airNoise);
    const given = exponents[behavior];
    if (exponentSource === 'fleet' && fleet.verdict === 'estimated')
      return {
        behavior,
        used: { ...given, temperature: fleet.exponent, temperatureSd: fleet.sd },
        source: 'fleet',
        fleet,
      };
    const usual = DENSITY_EXPONENTS[behavior];
    const edited = (Object.keys(usual) as (keyof DensityExponents)[]).some((key) => usual[key] !== given[key]);
    return { behavior, used: given, source: edited ? 'edited' : 'default', fleet };
  });
}

export function exponentsTable(rows: readonly ExponentsUsed[]): Table {
  const number = (of: (row: ExponentsUsed) => number): Column => numberColumn('1', Float64Array.from(rows, of));
  const text = (of: (row: ExponentsUsed) => string): Column => textColumn(rows.map(of));
  return tableOf(
    exponentsSchema,
    rows.length,
    new Map<string, Column>([
      ['behavior', text(({ behavior }) => behavior)],
      ['temperature_exponent', number(({ used }) => used.temperature)],
      ['temperature_exponent_sd', number(({ used }) => used.temperatureSd)],
      ['pressure_exponent', number(({ used }) => used.pressure)],
      ['season_sd', number(({ used }) => used.seasonSd)],
      ['source', text(({ source }) => source)],
      ['swings', number(({ fleet }) => fleet.swings)],
      ['units', number(({ fleet }) => fleet.units)],
      ['fleet_exponent', number(({ fleet }) => fleet.exponent)],
      ['fleet_lower', number(({ fleet }) => fleet.lower)],
      ['fleet_upper', number(({ fleet }) => fleet.upper)],
      ['fleet_says', text(({ fleet }) => fleet.verdict)],
    ]),
  );
}
