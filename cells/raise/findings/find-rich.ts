import { burnerBehavior } from '../../../shared/combustion/density-exponents.ts';
import { excessAirFromO2, o2FromExcessAir } from '../../../shared/combustion/flue-gas.ts';
import { knownExponents } from '../../../shared/combustion/known-exponents.ts';
import type { FuelProperties } from '../../../shared/fuels/fuel-properties.ts';
import { knownFuels } from '../../../shared/fuels/known-fuels.ts';
import { probabilityOutside } from '../../../shared/limits/probability-outside.ts';
import { checkRich, type RichFacts, richInSummer } from '../../../shared/messages/raise.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { power } from '../../../shared/quantities/elementary.ts';
import { textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import type { RaiseParameters } from '../parameters.ts';

/** A boiler room as it mostly is. */
const ROOM_AIR_C = 20;
const KELVIN = 273.15;
/** A boiler room sees about a quarter of the weather's swing (common practice, no source). */
const ROOM_SHARE = 0.25;
/**
 * Burners tuned in cool air that the hottest days would make rich: the last O2 of each fire, at reference air, carried to
 * the summer's air density. Only where burner and air source are known and no O2 trim holds it.
 */
export function findRichInSummer(
  fleet: Fleet,
  parameters: RaiseParameters,
  skip: (unit: string) => boolean,
  referenceAirC: number,
): Finding[] {
  const { readings } = fleet;
  const [fuel, fire] = [readings.text('fuel'), readings.text('fire')];
  const o2 = readings.number('o2_reference_pct');
  const sd = readings.number('o2_reference_pct_sd');
  const fuels = knownFuels(fleet.fuels);
  const findings: Finding[] = [];
  for (const [unit, hardware] of hardwareOf(fleet)) {
    if (skip(unit)) continue;
    for (const lane of readings.lanesOf(unit)) {
      const row = lane.findLast((candidate) => Number.isFinite(o2[candidate]));
      if (row === undefined) continue;
      const properties = fuels(fuel(row));
      if (!properties) continue;
      const airC = airOf(hardware, parameters.summerAirC);
      const at = (o2Pct: number): number => summerO2(o2Pct, hardware, airC, referenceAirC, properties);
      const summer = at(o2[row]);
      const slope = (at(o2[row] + 0.05) - at(o2[row] - 0.05)) / 0.1;
      const chance = probabilityOutside(summer, sd[row] * slope, parameters.richO2Pct, Number.NaN);
      if (!(chance >= parameters.leastChance)) continue;
      const facts = {
        fire: fire(row),
        fuel: fuel(row),
        takenOn: writeDay(readings.day[row]),
        o2Pct: o2[row],
        summerO2Pct: summer,
        summerAirC: airC,
        richO2Pct: parameters.richO2Pct,
      };
      findings.push(toFinding(unit, facts, chance));
    }
  }
  return findings;
}

const toFinding = (unit: string, facts: RichFacts, probability: number): Finding => ({
  unit,
  fuel: facts.fuel,
  fire: facts.fire,
  reason: 'rich_in_summer',
  probability,
  byDate: Number.NaN,
  falseDiscoveryRate: Number.NaN,
  evidence: richInSummer(facts),
  checkFirst: checkRich(),
  readingsUsed: 1,
  urgency: facts.richO2Pct - facts.summerO2Pct,
});

interface Hardware {
  readonly exponent: number;
  readonly room: boolean;
}

/** Burners whose air ratio follows the density of the air in a known way, by unit and with a known air source. */
function hardwareOf({ units, exponents }: Fleet): Map<string, Hardware> {
  const hardware = new Map<string, Hardware>();
  if (!units) return hardware;
  const [unit, burner, control, air, trim] = ['unit', 'burner', 'fuel_air_control', 'air_source', 'trim'].map((name) =>
    textsOf(units, name),
  );
  const exponentOf = knownExponents(exponents);
  for (let row = 0; row < units.rows; row++) {
    const behavior = burnerBehavior(textAt(burner, row), textAt(control, row), textAt(trim, row));
    const temperature = exponentOf(behavior);
    const source = textAt(air, row);
    if (temperature > 0 && (source === 'outside' || source === 'room'))
      hardware.set(textAt(unit, row), { exponent: temperature, room: source === 'room' });
  }
  return hardware;
}

const airOf = ({ room }: Hardware, summerAirC: number): number =>
  room ? ROOM_AIR_C + (summerAirC - ROOM_AIR_C) * ROOM_SHARE : summerAirC;

/** O2 on a hot day: lambda goes with (density ratio)^exponent, down to no oxygen at all. */
function summerO2(
  o2Pct: number,
  hardware: Hardware,
  airC: number,
  referenceAirC: number,
  fuel: FuelProperties,
): number {
  const density = (referenceAirC + KELVIN) / (airC + KELVIN);
  const excess = (1 + excessAirFromO2(o2Pct, fuel)) * power(density, hardware.exponent) - 1;
  return excess <= 0 ? 0 : o2FromExcessAir(excess, fuel);
}
