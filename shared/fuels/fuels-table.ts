import { convert } from '../quantities/convert.ts';
import { fuelsSchema } from '../schemas/fuels.ts';
import { FUEL_SOURCES } from '../sources/fuels.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import { tableOf } from '../table/schema.ts';
import type { Column, Table } from '../table/table.ts';
import { calculatedFactors } from './calculated-factors.ts';
import { EPA_FACTORS } from './epa-factors.ts';
import type { Fuel } from './fuel.ts';
import { type FuelProperties, fuelProperties } from './fuel-properties.ts';
import { gasQuality } from './gas-quality.ts';
import { idealHeatingValues } from './ideal-heating-values.ts';

const KG_PER_MOL_CO2 = 44.0095e-3;
const MJ_PER_KWH = 3.6;

/** One row a fuel, in the order of their names. */
export function fuelsTable(fuels: readonly Fuel[]): Table {
  const sorted = [...fuels].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const rows = sorted.map(numbersOfFuel);
  const given = new Map<string, Column>([
    ['fuel', textColumn(sorted.map(({ name }) => name))],
    ['title', textColumn(sorted.map(({ title }) => title))],
    ['source', textColumn(sorted.map(({ source }) => shortSource(source)))],
  ]);
  for (const { name, kind, unit } of fuelsSchema)
    if (kind === 'number')
      given.set(
        name,
        numberColumn(
          unit,
          Float64Array.from(rows, (row) => row[name] ?? Number.NaN),
        ),
      );
  return tableOf(fuelsSchema, sorted.length, given);
}

const shortSource = (key: string): string =>
  Object.hasOwn(FUEL_SOURCES, key) ? FUEL_SOURCES[key as keyof typeof FUEL_SOURCES].short : key;

function numbersOfFuel(fuel: Fuel): Readonly<Record<string, number>> {
  const found = fuelProperties(fuel);
  const { fd, fc, fo } = calculatedFactors(fuel);
  const epa = EPA_FACTORS.get(fuel.name);
  return {
    ...(fuel.composition.kind === 'gas'
      ? gasNumbers(fuel.composition.moles, found)
      : { gross_MJ_per_kg: found.gross / 1e6, net_MJ_per_kg: (found.gross * found.netOverGross) / 1e6 }),
    co2_max_pct: found.co2maxPct,
    co2_max_sd_pct: fuel.co2maxSdPct,
    air: found.air,
    oxygen: found.oxygen,
    carbon_dioxide: found.carbonDioxide,
    nitrogen: found.nitrogen,
    water: found.water,
    dry_flue: found.dryFlue,
    wet_flue: found.dryFlue + found.water,
    dry_ratio: found.dryRatio,
    net_over_gross: found.netOverGross,
    co2_kg_per_kWh: found.carbonDioxide * KG_PER_MOL_CO2 * MJ_PER_KWH,
    fd_calculated: fd,
    fd_epa: epa?.fd ?? Number.NaN,
    fc_calculated: fc,
    fc_epa: epa?.fc ?? Number.NaN,
    fo_calculated: Number.isFinite(fo) ? fo : Number.NaN,
    fo_epa_lower: epa?.foLower ?? Number.NaN,
    fo_epa_upper: epa?.foUpper ?? Number.NaN,
  };
}

function gasNumbers(
  moles: Readonly<Record<string, number>>,
  { gross, netOverGross }: FuelProperties,
): Readonly<Record<string, number>> {
  const real = gasQuality(moles);
  const normal = idealHeatingValues(moles, 'at25C', 0);
  const american = idealHeatingValues(moles, 'at60F', (60 - 32) / 1.8);
  return {
    gross_MJ_per_kg: gross / real.molarMass / 1e3,
    net_MJ_per_kg: (gross * netOverGross) / real.molarMass / 1e3,
    gross_MJ_per_m3_15C: real.grossPerM3 / 1e3,
    net_MJ_per_m3_15C: real.netPerM3 / 1e3,
    gross_MJ_per_m3_25C_0C: normal.grossPerM3,
    net_MJ_per_m3_25C_0C: normal.netPerM3,
    gross_Btu_per_ft3_60F: convert(american.grossPerM3, 'MJ/m3', 'Btu/ft3'),
    gross_wobbe_MJ_per_m3_15C: real.grossWobbe / 1e3,
    relative_density: real.relativeDensity,
  };
}
