import { MEASURED, type Measured } from '../../shared/combustion/analyzer-classes.ts';
import { type BlockSource, fromColumn, fromConstant, fromLevels, type Sources } from '../../shared/formula/sources.ts';
import { EPA_FACTORS } from '../../shared/fuels/epa-factors.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { numbersOf, textsOf } from '../../shared/table/columns.ts';
import type { Column, Table, TextColumn } from '../../shared/table/table.ts';
import type { DeriveParameters } from './parameters.ts';
import type { RegisterRows } from './register-rows.ts';
import type { ResolvedRows } from './resolve-fuels.ts';

const STANDARD_PA = 101_325;
/** Outside these no weather at sea level takes a barometer: the site is high, and its altitude is missing. */
export const SEA_LEVEL_KPA = [95, 106] as const;
/** No boiler stands where the air has another pressure than these: such a barometer reading is none. */
export const ATMOSPHERE_KPA = [50, 110] as const;
/** Standard uncertainties of the atmospheric pressure: read, and taken from the altitude (weather). */
const BAROMETER_SD_PA = 200;
const WEATHER_SD_PA = 1000;

/** Nothing is in a gas by less than none. */
const CONCENTRATIONS: ReadonlySet<string> = new Set(
  ['o2_pct', 'co2_pct', 'o2_wet_pct', 'co_ppm', 'co_air_free_ppm', 'nox_ppm'].map((name) => `reading.${name}`),
);

const FUEL_PROPERTIES: readonly (readonly [string, keyof FuelProperties])[] = [
  ['fuel.air', 'air'],
  ['fuel.oxygen', 'oxygen'],
  ['fuel.carbon_dioxide', 'carbonDioxide'],
  ['fuel.nitrogen', 'nitrogen'],
  ['fuel.water', 'water'],
  ['fuel.dry_flue', 'dryFlue'],
  ['fuel.co2_max', 'co2maxPct'],
  ['fuel.dry_ratio', 'dryRatio'],
  ['fuel.net_over_gross', 'netOverGross'],
];

/** Every input of the relations, drawn from the readings, the register and the fuels a block at a time. */
export function sourcesOf(
  readings: Table,
  register: RegisterRows,
  resolved: ResolvedRows,
  parameters: DeriveParameters,
): Sources {
  const numbers = new Map<string, BlockSource>();
  const uncertainties = new Map<string, BlockSource>();
  for (const name of MEASURED) {
    const values = numbersOf(readings, name);
    const spread = spreadOf(name, values, readings, parameters);
    if (name === 'air_C') {
      numbers.set('burner.air_C', filled(values, parameters.missingAirC));
      uncertainties.set('burner.air_C', (from, n, out) => {
        spread(from, n, out);
        for (let i = 0; i < n; i++) if (Number.isNaN(values[from + i])) out[i] = parameters.missingAirSdC;
      });
      numbers.set('reading.air_C', fromColumn(values));
      uncertainties.set('reading.air_C', spread);
    } else {
      numbers.set(`reading.${name}`, fromColumn(values));
      uncertainties.set(`reading.${name}`, spread);
    }
  }
  const texts = new Map<string, TextColumn>([['fuel', resolved.fuel]]);
  for (const [name, column] of readings.columns) {
    const key = `reading.${name}`;
    if (column.kind === 'text') texts.set(key, column);
    else if (!numbers.has(key)) numbers.set(key, fromColumn(column.values));
  }
  if (!texts.has('reading.co2_from')) texts.set('reading.co2_from', textsOf(readings, 'co2_from'));
  for (const [name, key] of FUEL_PROPERTIES)
    numbers.set(
      name,
      fromLevels(
        resolved.fuel.codes,
        resolved.properties.map((fuel) => fuel?.[key] ?? Number.NaN),
      ),
    );
  for (const key of ['fd', 'fc'] as const)
    numbers.set(
      `fuel.epa_${key}`,
      fromLevels(
        resolved.fuel.codes,
        resolved.fuel.levels.map((name) => EPA_FACTORS.get(name)?.[key] ?? Number.NaN),
      ),
    );
  uncertainties.set('fuel.co2_max', fromLevels(resolved.fuel.codes, resolved.co2maxSdPct));
  burnerSources(register, resolved, parameters, numbers, uncertainties);
  pressureSources(readings, register, resolved, numbers, uncertainties);
  const absent = new Set<string>();
  for (const name of [...MEASURED, 'co2_from']) if (isEmpty(readings.columns.get(name))) absent.add(`reading.${name}`);
  const bounds = new Map(
    (['co_ppm', 'co_air_free_ppm', 'nox_ppm'] as const).flatMap((name) => {
      const column = readings.columns.get(name);
      return column?.kind === 'number' && column.bounds ? [[`reading.${name}`, column.bounds] as const] : [];
    }),
  );
  return {
    rows: readings.rows,
    numbers,
    uncertainties,
    bounds,
    nonNegative: CONCENTRATIONS,
    absent,
    texts,
  };
}

/** Whether no row of the column is known; a column that is in use tells so within a few rows. */
function isEmpty(column: Column | undefined): boolean {
  if (!column) return true;
  if (column.kind === 'text') {
    for (let row = 0; row < column.codes.length; row++) if (column.codes[row] >= 0) return false;
    return true;
  }
  for (let row = 0; row < column.values.length; row++) if (!Number.isNaN(column.values[row])) return false;
  return true;
}

const filled =
  (values: Float64Array, instead: number): BlockSource =>
  (from, n, out) => {
    for (let i = 0; i < n; i++) {
      const value = values[from + i];
      out[i] = Number.isNaN(value) ? instead : value;
    }
  };

/** max(absolute, relative |x|) by the class of the row's analyzer. */
function spreadOf(name: Measured, values: Float64Array, readings: Table, parameters: DeriveParameters): BlockSource {
  const { codes, levels } = textsOf(readings, 'analyzer');
  const { classes, analyzers, defaultClass } = parameters;
  const spreads = levels.map((id) => classes[Object.hasOwn(analyzers, id) ? analyzers[id] : defaultClass][name]);
  const usual = classes[defaultClass][name];
  const absolute = Float64Array.from([usual, ...spreads], (spread) => spread.absolute);
  const relative = Float64Array.from([usual, ...spreads], (spread) => spread.relative);
  return (from, n, out) => {
    for (let i = 0; i < n; i++) {
      const which = codes[from + i] + 1;
      out[i] = Math.max(absolute[which], relative[which] * Math.abs(values[from + i]));
    }
  };
}

function burnerSources(
  { exponents }: RegisterRows,
  { registerRow }: ResolvedRows,
  parameters: DeriveParameters,
  numbers: Map<string, BlockSource>,
  uncertainties: Map<string, BlockSource>,
): void {
  const { unknown } = parameters.exponents;
  const by = (key: keyof typeof unknown): BlockSource =>
    fromLevels(
      registerRow,
      exponents.map((row) => row[key]),
      unknown[key],
    );
  numbers.set('burner.temperature_exponent', by('temperature'));
  numbers.set('burner.pressure_exponent', by('pressure'));
  numbers.set('burner.season', fromConstant(1));
  uncertainties.set('burner.temperature_exponent', by('temperatureSd'));
  uncertainties.set('burner.season', by('seasonSd'));
}

function pressureSources(
  readings: Table,
  { sitePressurePa }: RegisterRows,
  { registerRow }: ResolvedRows,
  numbers: Map<string, BlockSource>,
  uncertainties: Map<string, BlockSource>,
): void {
  const barometer = numbersOf(readings, 'barometer_kPa').map((read) =>
    read >= ATMOSPHERE_KPA[0] && read <= ATMOSPHERE_KPA[1] ? read : Number.NaN,
  );
  const site = fromLevels(registerRow, sitePressurePa);
  const sitePressure: BlockSource = (from, n, out) => {
    site(from, n, out);
    for (let i = 0; i < n; i++) {
      if (!Number.isNaN(out[i])) continue;
      const read = barometer[from + i];
      out[i] = read < SEA_LEVEL_KPA[0] || read > SEA_LEVEL_KPA[1] ? read * 1000 : STANDARD_PA;
    }
  };
  numbers.set('site_pressure_Pa', sitePressure);
  numbers.set('pressure_Pa', (from, n, out) => {
    sitePressure(from, n, out);
    for (let i = 0; i < n; i++) {
      const read = barometer[from + i];
      if (!Number.isNaN(read)) out[i] = read * 1000;
    }
  });
  uncertainties.set('pressure_Pa', (from, n, out) => {
    for (let i = 0; i < n; i++) out[i] = Number.isNaN(barometer[from + i]) ? WEATHER_SD_PA : BAROMETER_SD_PA;
  });
}
