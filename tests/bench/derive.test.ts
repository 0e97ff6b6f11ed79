import { describe, expect, test } from 'vitest';
import { compute } from '../../cells/derive/compute.ts';
import { DERIVE_DEFAULTS } from '../../cells/derive/parameters.ts';
import { registerRows } from '../../cells/derive/register-rows.ts';
import { resolveFuels } from '../../cells/derive/resolve-fuels.ts';
import { scopeOf } from '../../cells/derive/scope.ts';
import { sourcesOf } from '../../cells/derive/sources-of.ts';
import type { CellContext, CellResult } from '../../shared/cell.ts';
import { DERIVED_COLUMNS } from '../../shared/combustion/derived-columns.ts';
import { compileFormulas } from '../../shared/formula/compile-formulas.ts';
import { Evaluator } from '../../shared/formula/evaluator.ts';
import type { OutputColumn } from '../../shared/formula/sources.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { numbersOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { deriveInSql, SQL_COLUMNS } from './derive-in-sql.ts';
import { handWrittenLoop, type LoopInput } from './hand-written-loop.ts';
import { manyReadings } from './many-readings.ts';

const ROWS = 1_000_000;
const CONTEXT: CellContext = {
  asOf: 20_000,
  seed: 1,
  signal: new AbortController().signal,
  source: () => undefined,
  progress: () => {},
  pause: async () => {},
};
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];
const ROUNDS = 9;

/** Milliseconds of processor that the whole process took, its threads included; other work on the machine is not in it. */
async function timed(work: () => unknown): Promise<number> {
  const began = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
}

/** Medians over rounds in which each takes its turn; the first round warms up. */
async function sideBySide(works: readonly (() => unknown)[]): Promise<number[]> {
  const times: number[][] = works.map(() => []);
  for (let round = 0; round <= ROUNDS; round++)
    for (const [which, work] of works.entries()) {
      const took = await timed(work);
      if (round > 0) times[which].push(took);
    }
  return times.map(median);
}

function expectNear(found: number, expected: number, what: string): void {
  expect(Math.abs(found - expected), what).toBeLessThan(1e-8 * (1 + Math.abs(expected)));
}

/** Bytes that the derived columns take beside the columns that they share with the readings. */
function bytesOf(derived: Table, readings: Table): number {
  const shared = new Set([...readings.columns.values()]);
  return [...derived.columns.values()]
    .filter((column) => !shared.has(column))
    .reduce((sum, column) => {
      if (column.kind === 'text') return sum + column.codes.byteLength;
      const bounds = column.kind === 'number' ? (column.bounds?.byteLength ?? 0) : 0;
      return sum + column.values.byteLength + bounds;
    }, 0);
}

describe(`derivations of ${ROWS.toLocaleString('en')} readings`, () => {
  const { readings, units } = manyReadings(ROWS);

  test('with uncertainty and flags: at most 5 s on one core, 300 bytes a reading', async () => {
    const inputs = new Map<string, CellResult>([
      ['readings', { tables: { accepted: readings } }],
      ['register', { tables: { units } }],
    ]);
    const before = process.memoryUsage().arrayBuffers;
    const began = performance.now();
    const cpu = process.cpuUsage();
    const result = await compute(DERIVE_DEFAULTS, inputs, CONTEXT);
    const elapsed = performance.now() - began;
    const { user, system } = process.cpuUsage(cpu);
    if (result.status !== 'value') throw new Error('derive');
    const kept = bytesOf(result.value.tables.derived, readings) / ROWS;
    const held = (process.memoryUsage().arrayBuffers - before) / ROWS;
    console.log(
      `derive: ${(elapsed / 1000).toFixed(2)} s, ${((user + system) / 1e6).toFixed(2)} s of processor; ${kept.toFixed(0)} bytes a reading kept, ${held.toFixed(0)} held`,
    );
    expect(result.value.tables.derived.rows).toBe(ROWS);
    expect(kept).toBeLessThan(300);
    expect((user + system) / 1e6).toBeLessThan(5);
  });

  const register = registerRows(units, DERIVE_DEFAULTS.exponents);
  const resolved = resolveFuels(readings, register, '', []);
  const sources = { ...sourcesOf(readings, register, resolved, DERIVE_DEFAULTS), bounds: new Map() };
  const of = (name: string): Float64Array => numbersOf(readings, name);
  const input: LoopInput = {
    o2: of('o2_pct'),
    co: of('co_ppm'),
    nox: of('nox_ppm'),
    flue: of('flue_C'),
    air: of('air_C'),
    fixed: of('supply_static_Pa'),
    running: of('supply_running_Pa'),
    fuelCodes: resolved.fuel.codes,
    fuels: resolved.properties as readonly FuelProperties[],
    registerRow: resolved.registerRow,
    exponents: register.exponents.map(({ temperature, pressure }) => [temperature, pressure] as const),
  };

  /** Evaluates columns without their uncertainties. */
  function valuesOf(names: readonly string[]): { run: () => void; columns: ReadonlyMap<string, OutputColumn> } {
    const compiled = compileFormulas(names, scopeOf(DERIVE_DEFAULTS, readings, 20));
    if (compiled.status !== 'value') throw new Error('formulas');
    const columns = new Map(names.map((name): [string, OutputColumn] => [name, { values: new Float64Array(ROWS) }]));
    const evaluator = new Evaluator(compiled.value, sources, columns, false);
    return { run: () => evaluator.run(0, ROWS), columns };
  }

  test('values alone: at most 2.5 times a loop written by hand', async () => {
    const { run, columns } = valuesOf(DERIVED_COLUMNS);
    const out = DERIVED_COLUMNS.map(() => new Float64Array(ROWS));
    const [ours, theirs] = await sideBySide([run, () => handWrittenLoop(input, out, ROWS)]);
    const ratio = ours / theirs;
    console.log(`values: ${ours.toFixed(0)} ms, by hand ${theirs.toFixed(0)} ms, ratio ${ratio.toFixed(2)}`);
    DERIVED_COLUMNS.forEach((name, column) => {
      const values = columns.get(name)?.values ?? new Float64Array();
      for (let row = 0; row < ROWS; row += 997) expectNear(values[row], out[column][row], `${name} ${row}`);
    });
    expect(ratio).toBeLessThan(2.5);
  });

  test.each([
    ['fuel and burner joined', false],
    ['fuel and burner beside each reading', true],
  ])('values alone, no dew point: at most as long as DuckDB on one thread, %s', async (how, flat) => {
    const peer = await deriveInSql(input, ROWS, flat);
    const { run, columns } = valuesOf(SQL_COLUMNS);
    const [ours, written, summed] = await sideBySide([run, peer.write, peer.sum]);
    console.log(
      `DuckDB ${peer.version}, ${how}: ours ${ours.toFixed(0)} ms; written to a table ${written.toFixed(0)} ms, ratio ${(ours / written).toFixed(2)}; summed only ${summed.toFixed(0)} ms, ratio ${(ours / summed).toFixed(2)}`,
    );
    for (const name of SQL_COLUMNS) {
      const every = 997;
      const theirs = await peer.column(name, every);
      const values = columns.get(name)?.values ?? new Float64Array();
      theirs.forEach((value, at) => {
        expectNear(values[at * every], value, `${name} ${at * every}`);
      });
    }
    peer.close();
    expect(ours / written).toBeLessThan(1);
    expect(ours / summed).toBeLessThan(1);
  });
});
