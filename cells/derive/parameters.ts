import { ANALYZER_CLASSES, type AnalyzerClass, MEASURED } from '../../shared/combustion/analyzer-classes.ts';
import { DENSITY_EXPONENTS, type DensityExponents } from '../../shared/combustion/density-exponents.ts';
import { CONSTANTS } from '../../shared/combustion/relations/constants.ts';
import { RELATIONS } from '../../shared/combustion/relations/relations.ts';
import { findFuel } from '../../shared/fuels/find-fuel.ts';
import { ownFuels } from '../../shared/fuels/own-fuels.ts';
import { readFuel } from '../../shared/fuels/read-fuel.ts';
import * as message from '../../shared/messages/derive.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { findUnit } from '../../shared/quantities/find-unit.ts';

/** A column of the user's own. */
export interface OwnColumn {
  readonly name: string;
  /** UCUM code or common name; '' leaves it to the formula. */
  readonly unit: string;
  readonly formula: string;
}

export interface DeriveParameters {
  readonly readings: string;
  /** '' where the notebook has no register. */
  readonly register: string;
  /** For readings and units that name none; '' takes natural_gas and says so. */
  readonly defaultFuel: string;
  /** Fuels of the user's own, as readFuel takes them. */
  readonly fuels: readonly unknown[];
  /** Class of an analyzer by its id; those not listed are of the default class. */
  readonly analyzers: Readonly<Record<string, string>>;
  readonly defaultClass: string;
  /** Standard uncertainties by class of analyzer. */
  readonly classes: Readonly<Record<string, AnalyzerClass>>;
  /** Of the combustion air, %; 0 is dry. */
  readonly relativeHumidityPct: number;
  /** What stands in for a missing air temperature, and its standard uncertainty. */
  readonly missingAirC: number;
  readonly missingAirSdC: number;
  /** By behavior of the burner: fixed_volume, pneumatic, trim, atmospheric, unknown. */
  readonly exponents: Readonly<Record<string, DensityExponents>>;
  /** Whether the exponents over temperature are those of the table, or the fleet's own where it has enough readings. */
  readonly exponentSource: 'table' | 'fleet';
  readonly columns: readonly OwnColumn[];
}

export const EXPONENT_SOURCES: readonly string[] = ['table', 'fleet'];

export const DERIVE_DEFAULTS: DeriveParameters = {
  readings: 'readings',
  register: 'register',
  defaultFuel: '',
  fuels: [],
  analyzers: {},
  defaultClass: 'service',
  classes: ANALYZER_CLASSES,
  relativeHumidityPct: 0,
  missingAirC: 20,
  missingAirSdC: 8,
  exponents: DENSITY_EXPONENTS,
  exponentSource: 'table',
  columns: [],
};

const RANGES: readonly (readonly ['relativeHumidityPct' | 'missingAirC' | 'missingAirSdC', string, number, number])[] =
  [
    ['relativeHumidityPct', 'the humidity of the air in %', 0, 100],
    ['missingAirC', 'the air temperature in °C', -40, 60],
    ['missingAirSdC', 'the uncertainty of the air temperature in °C', 0, 40],
  ];

export function readParameters(raw: unknown): Outcome<DeriveParameters> {
  const given = (isRecord(raw) ? raw : {}) as Readonly<Record<string, unknown>>;
  const parameters = Object.fromEntries(
    Object.entries(DERIVE_DEFAULTS).map(([key, value]) => [key, given[key] ?? value]),
  ) as unknown as DeriveParameters;
  const shown = (value: unknown): string => JSON.stringify(value) ?? 'nothing';
  for (const key of ['readings', 'register', 'defaultFuel', 'defaultClass'] as const)
    if (typeof parameters[key] !== 'string') return fail(message.notText(key, shown(parameters[key])));
  if (parameters.readings === '') return fail(message.noReadingsNamed());
  for (const [key, what, least, most] of RANGES) {
    const value = parameters[key];
    if (!(typeof value === 'number' && value >= least && value <= most))
      return fail(message.notInRange(what, least, most, shown(value)));
  }
  if (!EXPONENT_SOURCES.includes(parameters.exponentSource))
    return fail(message.notASource(shown(parameters.exponentSource), EXPONENT_SOURCES.join(', ')));
  const wrong =
    wrongFuel(parameters) ?? wrongClasses(parameters) ?? wrongExponents(parameters) ?? wrongColumns(parameters);
  return wrong === undefined ? succeed(parameters) : fail(wrong);
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function wrongFuel({ defaultFuel, fuels }: DeriveParameters): string | undefined {
  if (!Array.isArray(fuels)) return message.notATable('fuels');
  for (const raw of fuels) {
    const own = readFuel(raw);
    if (own.status === 'error') return own.message;
  }
  if (defaultFuel === '') return undefined;
  const found = findFuel(defaultFuel, ownFuels(fuels));
  return found.status === 'error' ? found.message : undefined;
}

const isPositive = (value: unknown): boolean => typeof value === 'number' && value >= 0 && value < 1e6;

function wrongClasses({ classes, analyzers, defaultClass }: DeriveParameters): string | undefined {
  if (!isRecord(classes)) return message.notATable('classes');
  for (const [name, spreads] of Object.entries(classes as Readonly<Record<string, unknown>>)) {
    if (!isRecord(spreads)) return message.notATable(`classes.${name}`);
    for (const quantity of MEASURED) {
      const spread = spreads[quantity];
      if (!isRecord(spread) || !isPositive(spread.absolute) || !isPositive(spread.relative))
        return message.notASpread(name, quantity);
    }
  }
  if (!isRecord(analyzers)) return message.notATable('analyzers');
  const names = Object.keys(classes);
  for (const [analyzer, name] of [['', defaultClass], ...Object.entries(analyzers)])
    if (!names.includes(name)) return message.unknownClass(analyzer, String(name), names.join(', '));
  return undefined;
}

function wrongExponents({ exponents }: DeriveParameters): string | undefined {
  if (!isRecord(exponents)) return message.notATable('exponents');
  for (const behavior of Object.keys(DENSITY_EXPONENTS)) {
    const row = (exponents as Readonly<Record<string, unknown>>)[behavior];
    const numbers = ['temperature', 'pressure', 'temperatureSd', 'seasonSd'];
    if (!isRecord(row) || !numbers.every((key) => typeof row[key] === 'number' && Math.abs(row[key] as number) <= 2))
      return message.notExponents(behavior);
  }
  return undefined;
}

/** A column of one's own under a relation's name would change what every other relation says. */
const TAKEN: ReadonlySet<string> = new Set([
  ...RELATIONS.map(({ name }) => name),
  ...CONSTANTS.keys(),
  'fuel',
  'unknown',
]);

function wrongColumns({ columns }: DeriveParameters): string | undefined {
  const seen = new Set<string>();
  if (!Array.isArray(columns)) return message.notATable('columns');
  for (const column of columns as readonly unknown[]) {
    if (!isRecord(column) || !['name', 'unit', 'formula'].every((key) => typeof column[key] === 'string'))
      return message.notAColumn(JSON.stringify(column) ?? 'nothing');
    const { name, unit } = column as unknown as OwnColumn;
    if (!/^[A-Za-z_]\w{0,59}$/.test(name)) return message.badColumnName(name);
    if (TAKEN.has(name)) return message.nameOfOurs(name);
    if (seen.has(name) || seen.has(`${name}_sd`) || seen.has(name.replace(/_sd$/, '')))
      return message.columnTwice(name);
    seen.add(name);
    if (!findUnit(unit)) return message.badColumnUnit(name, unit);
  }
  return undefined;
}
