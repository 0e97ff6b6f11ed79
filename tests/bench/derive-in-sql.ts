import { DOUBLE, DuckDBDataChunk, DuckDBInstance, INTEGER } from '@duckdb/node-api';
import { NASA_FITS, NASA_GAS_CONSTANT, type Species } from '../../shared/combustion/nasa-coefficients.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import type { LoopInput } from './hand-written-loop.ts';

/** A database in memory that derives on one thread. */
export interface DeriveInSql {
  readonly version: string;
  /** All columns written to a table of its own, as an analyst would have them. */
  readonly write: () => Promise<void>;
  /** The same arithmetic with nothing kept of it but a sum a column. */
  readonly sum: () => Promise<void>;
  /** One derived column of every so many rows. */
  readonly column: (name: string, every: number) => Promise<readonly number[]>;
  readonly close: () => void;
}

/** What the query derives, in the order of DERIVED_COLUMNS and without the dew point. */
export const SQL_COLUMNS = [
  'o2_pct',
  'co2_pct',
  'excess_air_pct',
  'lambda',
  'co_air_free_ppm',
  'co_at_3pct_o2_ppm',
  'co_co2_ratio',
  'nox_at_3pct_o2_ppm',
  'stack_loss_pct',
  'efficiency_gross_pct',
  'efficiency_net_pct',
  'supply_drop_Pa',
  'o2_reference_pct',
  'co2_reference_pct',
] as const;

const CHUNK = 2048;
const NUMBERS = ['o2', 'co', 'nox', 'flue', 'air', 'fixed', 'running'] as const;
const FUEL: readonly (readonly [string, keyof FuelProperties])[] = [
  ['n_air', 'air'],
  ['n_oxygen', 'oxygen'],
  ['n_carbon', 'carbonDioxide'],
  ['n_nitrogen', 'nitrogen'],
  ['n_water', 'water'],
  ['n_dry', 'dryFlue'],
  ['co2max', 'co2maxPct'],
  ['k', 'dryRatio'],
  ['net', 'netOverGross'],
];

/** H(T) - H(25 °C) of a gas in J/mol as SQL, `t` and `l` naming the temperature in K and its logarithm. */
function enthalpySql(gas: Species, t: string, l: string): string {
  const { a } = NASA_FITS[gas];
  const R = NASA_GAS_CONSTANT;
  const c = [-a[0], a[1], a[2], a[3] / 2, a[4] / 3, a[5] / 4, a[6] / 5].map((each) => each * R);
  const T = 298.15;
  const datum = c[0] / T + c[1] * Math.log(T) + T * (c[2] + T * (c[3] + T * (c[4] + T * (c[5] + T * c[6]))));
  const [p, q, r, s, u, v, w, d] = [...c, datum].map((each) => `${each.toExponential()}::DOUBLE`);
  return `(${p} / ${t} + ${q} * ${l} + ${t} * (${r} + ${t} * (${s} + ${t} * (${u} + ${t} * (${v} + ${t} * ${w})))) - ${d})`;
}

/** IAPWS-IF97 region 4, a step a line, since a query has no variables. */
const SATURATION = `
  sat1 AS (SELECT *, tf - 0.23855557567849e0 / (tf - 0.65017534844798e3) AS th FROM base),
  sat2 AS (SELECT *, th * th + 0.11670521452767e4 * th - 0.72421316703206e6 AS qa,
    -0.17073846940092e2 * th * th + 0.1202082470247e5 * th - 0.32325550322333e7 AS qb,
    0.1491510861353e2 * th * th - 0.48232657361591e4 * th + 0.40511340542057e6 AS qc FROM sat1),
  sat3 AS (SELECT *, CASE WHEN tf < 358.15 THEN 2 * qc / (sqrt(qb * qb - 4 * qa * qc) - qb) END AS root FROM sat2),
  sat AS (SELECT *, root * root * (root * root) * 1e6 AS ps FROM sat3)`;

const QUERY = `
WITH
  x AS (SELECT *, CASE WHEN o2 >= 0 AND o2 < 20.9::DOUBLE THEN o2 END AS x, air + 273.15::DOUBLE AS ta,
    CASE WHEN flue >= air THEN flue + 273.15::DOUBLE END AS tf FROM joined),
  e AS (SELECT *, k * x / (20.95::DOUBLE - x) AS e, co2max * (1 - x / 20.95::DOUBLE) AS c, ln(tf) AS lf, ln(ta) AS la,
    co * 20.9::DOUBLE / (20.9::DOUBLE - x) AS af FROM x),
  base AS (SELECT *, 1 + e AS l, n_dry + e * n_air AS dry FROM e),
  ${SATURATION},
  vapor AS (SELECT *, CASE WHEN tf < 358.15 THEN least(n_water, dry * ps / (101325::DOUBLE - ps)) ELSE n_water END AS vapor FROM sat),
  heat AS (SELECT *, (l * n_air * (${enthalpySql('air', 'tf', 'lf')} - ${enthalpySql('air', 'ta', 'la')})
      - n_oxygen * ${enthalpySql('O2', 'tf', 'lf')} + n_carbon * ${enthalpySql('CO2', 'tf', 'lf')}
      + n_nitrogen * ${enthalpySql('N2', 'tf', 'lf')}
      + vapor * (44013::DOUBLE + ${enthalpySql('H2O', 'tf', 'lf')}) + (n_water - vapor) * 75.33::DOUBLE * (tf - 298.15::DOUBLE)
      + coalesce(co * 1e-6 * dry * 282980::DOUBLE, 0)) / 1e4 AS q,
    pow(ta / 293.15::DOUBLE, by_temperature) * pow(101325::DOUBLE / 101325::DOUBLE, by_pressure) AS factor FROM vapor),
  reference AS (SELECT *, l * factor - 1 AS er, (1 + k * (co2max / c - 1)) * factor - 1 AS ec FROM heat)
SELECT x AS o2_pct, c AS co2_pct, 100 * e AS excess_air_pct, l AS lambda, af AS co_air_free_ppm,
  af * 17.9::DOUBLE / 20.9::DOUBLE AS co_at_3pct_o2_ppm, co / c / 1e4 AS co_co2_ratio,
  nox * 17.9::DOUBLE / (20.9::DOUBLE - x) AS nox_at_3pct_o2_ppm, q AS stack_loss_pct, 100 - q AS efficiency_gross_pct,
  (100 - q) / net AS efficiency_net_pct, fixed - running AS "supply_drop_Pa",
  20.95::DOUBLE * er / (k + er) AS o2_reference_pct, co2max * k / (k + ec) AS co2_reference_pct
FROM reference`;

/** Loads the input. `flat` keeps fuel and burner beside each reading; else they are joined from tables of their own. */
export async function deriveInSql(input: LoopInput, rows: number, flat: boolean): Promise<DeriveInSql> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  await connection.run('SET threads = 1');
  const columns = NUMBERS.map((name) => `${name} DOUBLE`).join(', ');
  await connection.run(`CREATE TABLE readings (${columns}, fuel_code INTEGER, register_row INTEGER)`);
  const appender = await connection.createAppender('readings');
  const types = [...NUMBERS.map(() => DOUBLE), INTEGER, INTEGER];
  for (let from = 0; from < rows; from += CHUNK) {
    const to = Math.min(from + CHUNK, rows);
    const chunk = DuckDBDataChunk.create(types, to - from);
    NUMBERS.forEach((name, index) => {
      chunk.setColumnValues(index, Array.from(input[name].subarray(from, to)));
    });
    chunk.setColumnValues(NUMBERS.length, Array.from(input.fuelCodes.subarray(from, to)));
    chunk.setColumnValues(NUMBERS.length + 1, Array.from(input.registerRow.subarray(from, to)));
    appender.appendDataChunk(chunk);
  }
  appender.closeSync();
  const fuelRows = input.fuels.map((fuel, code) => `(${code}, ${FUEL.map(([, key]) => fuel[key]).join(', ')})`);
  const fuelColumns = FUEL.map(([name]) => name).join(', ');
  await connection.run(
    `CREATE TABLE fuels AS SELECT code, ${FUEL.map(([name]) => `${name}::DOUBLE AS ${name}`).join(', ')} FROM (VALUES ${fuelRows.join(', ')}) AS v(code, ${fuelColumns})`,
  );
  const burners = input.exponents.map(([temperature, pressure], row) => `(${row}, ${temperature}, ${pressure})`);
  await connection.run(
    `CREATE TABLE burners AS SELECT row_number, by_temperature::DOUBLE AS by_temperature, by_pressure::DOUBLE AS by_pressure FROM (VALUES ${burners.join(', ')}) AS v(row_number, by_temperature, by_pressure)`,
  );
  const joined = `SELECT ${NUMBERS.join(', ')}, ${fuelColumns}, by_temperature, by_pressure FROM readings JOIN fuels ON fuel_code = code JOIN burners ON register_row = row_number`;
  await connection.run(`CREATE ${flat ? 'TABLE' : 'VIEW'} joined AS ${joined}`);
  const found = await connection.runAndReadAll('SELECT version()');
  const sums = SQL_COLUMNS.map((name) => `sum("${name}")`).join(', ');
  return {
    version: String(found.getRows()[0]?.[0]),
    write: async () => void (await connection.run(`CREATE OR REPLACE TABLE derived AS ${QUERY}`)),
    sum: async () => void (await connection.runAndReadAll(`SELECT ${sums} FROM (${QUERY})`)),
    column: async (name, every) => {
      const read = await connection.runAndReadAll(`SELECT "${name}" FROM derived WHERE rowid % ${every} = 0`);
      return read.getRows().map(([value]) => (value === null ? Number.NaN : Number(value)));
    },
    close: () => {
      connection.closeSync();
      instance.closeSync();
    },
  };
}
