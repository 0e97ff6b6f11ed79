import { compile } from 'vega-lite';
import { describe, expect, test } from 'vitest';
import { type ChartResult, compute } from '../../../cells/chart/compute.ts';
import { MOST_POINTS } from '../../../cells/chart/draw-points.ts';
import { readParameters } from '../../../cells/chart/parameters.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { exampleContext, exampleInputs, exampleOf } from '../read-example.ts';

type Logger = NonNullable<NonNullable<Parameters<typeof compile>[1]>['logger']>;
type Columns = Readonly<Record<string, readonly (string | number | null)[]>>;

async function chartOf(columns: Columns, parameters: Record<string, string>): Promise<Outcome<ChartResult>> {
  const read = readParameters(parameters);
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const example = {
    kind: 'chart',
    parameters: {},
    inputs: { derive: { tables: { derived: { schema: 'derived', columns } } } },
  };
  return compute(read.value, exampleInputs(example), await exampleContext(example));
}

const COLUMNS: Columns = {
  unit: ['A', 'A', 'B', 'B'],
  taken_at: ['2024-02-11', '2025-02-11', '2026-02-11', null],
  fire: ['high', 'low', 'high', 'high'],
  o2_pct: [4.1, 4.6, 6.2, 5],
  co2_pct: [9.5, 9.2, null, 9],
};

async function drawn(columns: Columns, parameters: Record<string, string>): Promise<ChartResult> {
  const result = await chartOf(columns, parameters);
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  return result.value;
}

const points = ({ figures: [figure] }: ChartResult): Record<string, unknown>[] =>
  (figure.specification['data'] as { values: Record<string, unknown>[] }).values;

test('finished values under generated names: dates in milliseconds, unknown rows left out', async () => {
  const chart = await drawn(COLUMNS, { y: 'o2_pct' });
  expect(points(chart)).toEqual([
    { f0: Date.UTC(2024, 1, 11), f1: 4.1, f2: 'high' },
    { f0: Date.UTC(2025, 1, 11), f1: 4.6, f2: 'low' },
    { f0: Date.UTC(2026, 1, 11), f1: 6.2, f2: 'high' },
  ]);
  expect(chart.answer).toBe('O2, dry against Taken: 3 of 4 rows.');
});

test('a condition in the formula language keeps the rows for which it holds', async () => {
  const where = async (condition: string): Promise<number> =>
    (await drawn(COLUMNS, { x: 'unit', y: 'o2_pct', where: condition })).tables['drawn'].rows;
  expect(await where('fire == "high"')).toBe(3);
  expect(await where('fire == "high" && o2_pct > 4.5')).toBe(2);
  // Unknown is not kept: the third row has no CO2.
  expect(await where('co2_pct > 0')).toBe(3);
  expect(await where('')).toBe(4);
});

describe('faults are one clear error', () => {
  const message = async (parameters: Record<string, string>): Promise<string> => {
    const result = await chartOf(COLUMNS, parameters);
    return result.status === 'error' ? result.message : '';
  };
  test('a column, a table, a condition', async () => {
    expect(await message({ y: 'o2_pkt' })).toContain(
      'chart: y names the column o2_pkt, which table derived lacks: did you mean o2_pct?',
    );
    expect(await message({ table: 'nope' })).toBe('chart: cell derive has no table nope; it has derived.');
    expect(await message({ y: 'o2_pct', where: 'o2_pkt > 3' })).toContain('did you mean o2_pct?');
    expect(await message({ y: 'o2_pct', where: 'o2_pct >' })).not.toBe('');
    expect(await message({ y: 'o2_pct', where: 'o2_pct' })).not.toBe('');
    expect(await message({ y: 'o2_pct', where: 'constructor.constructor("x")()' })).not.toBe('');
  });
});

test('the specification is sound Vega-Lite for every mix of column types', async () => {
  for (const x of ['taken_at', 'unit', 'co2_pct'])
    for (const y of ['o2_pct', 'fire'])
      for (const color of ['', 'fire', 'o2_pct', 'taken_at']) {
        const { figures } = await drawn(COLUMNS, { x, y, color });
        const warnings: string[] = [];
        const note = (...found: unknown[]) => {
          warnings.push(String(found));
          return logger;
        };
        const logger: Logger = {
          level: () => logger,
          warn: note,
          info: () => logger,
          debug: () => logger,
          error: note,
        };
        compile(figures[0].specification as unknown as Parameters<typeof compile>[0], {
          logger,
        });
        expect(warnings).toEqual([]);
      }
});

test('many rows are thinned out evenly, and said so; many colors are gathered', async () => {
  const rows = 12_001;
  const columns: Columns = {
    unit: Array.from({ length: rows }, (_, i) => `U-${i % 20}`),
    taken_at: Array.from({ length: rows }, () => '2025-01-01'),
    o2_pct: Array.from({ length: rows }, (_, i) => i / 1000),
  };
  const chart = await drawn(columns, { y: 'o2_pct', color: 'unit' });
  expect(points(chart).length).toBeLessThanOrEqual(MOST_POINTS);
  expect(chart.remarks.map(({ text }) => text).join(' ')).toMatch(/of 12001 rows are drawn.*Unit has 20 values/s);
  expect(new Set(points(chart).map(({ f2 }) => f2)).size).toBe(6);
});

test('its example draws two of four rows', async () => {
  const example = exampleOf('chart');
  const read = readParameters(example.parameters);
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const result = await compute(read.value, exampleInputs(example), await exampleContext(example));
  expect(result.status === 'value' && result.value.tables['drawn'].rows).toBe(2);
});
