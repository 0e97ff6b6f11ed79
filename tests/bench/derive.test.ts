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
import { handWrittenLoop } from './hand-written-loop.ts';
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
const timed = (work: () => void): number => {
  const began = performance.now();
  work();
  return performance.now() - began;
};

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

  test('values alone: at most 2.5 times a loop written by hand', () => {
    const register = registerRows(units, DERIVE_DEFAULTS.exponents);
    const resolved = resolveFuels(readings, register, '', []);
    const scope = scopeOf(DERIVE_DEFAULTS, readings);
    const compiled = compileFormulas(DERIVED_COLUMNS, scope);
    if (compiled.status !== 'value') throw new Error('formulas');
    const columns = new Map(
      DERIVED_COLUMNS.map((name): [string, OutputColumn] => [name, { values: new Float64Array(ROWS) }]),
    );
    const evaluator = new Evaluator(
      compiled.value,
      { ...sourcesOf(readings, register, resolved, DERIVE_DEFAULTS), bounds: new Map() },
      columns,
      false,
    );
    const of = (name: string): Float64Array => numbersOf(readings, name);
    const input = {
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
    const out = DERIVED_COLUMNS.map(() => new Float64Array(ROWS));
    const [ours, theirs] = [[] as number[], [] as number[]];
    for (let run = 0; run < 7; run++) {
      theirs.push(timed(() => handWrittenLoop(input, out, ROWS)));
      ours.push(timed(() => evaluator.run(0, ROWS)));
    }
    const ratio = median(ours) / median(theirs);
    console.log(
      `values: ${median(ours).toFixed(0)} ms, by hand ${median(theirs).toFixed(0)} ms, ratio ${ratio.toFixed(2)}`,
    );
    DERIVED_COLUMNS.forEach((name, column) => {
      const values = columns.get(name)?.values ?? new Float64Array();
      for (let row = 0; row < ROWS; row += 997)
        expect(Math.abs(values[row] - out[column][row]), `${name} ${row}`).toBeLessThan(
          1e-8 * (1 + Math.abs(out[column][row])),
        );
    });
    expect(ratio).toBeLessThan(2.5);
  });
});
