/**
 * The uncertainty of savings against Monte Carlo, readings to savings: analyzers with a bias of their own, drawn anew, and
 * noise in every reading. Of an instrument's variance 0.6 is bias and 0.4 noise, as the project takes it.
 */
import { describe, expect, test } from 'vitest';
import { compute } from '../../../cells/savings/compute.ts';
import { readParameters } from '../../../cells/savings/parameters.ts';
import type { CellResult } from '../../../shared/cell.ts';
import { ANALYZER_CLASSES } from '../../../shared/combustion/analyzer-classes.ts';
import { DENSITY_EXPONENTS } from '../../../shared/combustion/density-exponents.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { economicsSchema } from '../../../shared/schemas/register.ts';
import { numbersOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';
import { CONTEXT, deriveReadings, type Row, tableFrom } from '../derive/derive-readings.ts';

const BIAS = 0.6;
const O2_SD = 0.17;
const FLUE_SD = 1.5;
const Z90 = 1.6448536;

/** Seeded uniform numbers (mulberry32), and normal ones by Box and Muller. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

interface Bias {
  readonly name: string;
  readonly o2: number;
  readonly flue: number;
}

/** Found and left at two fires of one unit, as two analyzers show them. */
function visit(unit: string, found: Bias, left: Bias, normal: (() => number) | undefined): Row[] {
  const noise = (sd: number): number => (normal ? normal() * sd * Math.sqrt(1 - BIAS) : 0);
  return (
    [
      ['high', 'as_found', 7, 235, found],
      ['high', 'as_left', 4, 220, left],
      ['low', 'as_found', 8.5, 165, found],
      ['low', 'as_left', 6, 160, left],
    ] as const
  ).map(([fire, state, o2, flue, analyzer]) => ({
    unit,
    taken_at: '2026-02-01',
    fire,
    state,
    fuel: 'natural_gas',
    o2_pct: o2 + analyzer.o2 + noise(O2_SD),
    flue_C: flue + analyzer.flue + noise(FLUE_SD),
    air_C: 8,
    analyzer: analyzer.name,
  }));
}

/** What is not drawn is held exact: air, exponent, weather. */
const EXACT = {
  exponents: {
    ...DENSITY_EXPONENTS,
    fixed_volume: { temperature: 1, pressure: 0, temperatureSd: 0, seasonSd: 0 },
  },
  classes: { ...ANALYZER_CLASSES, service: { ...ANALYZER_CLASSES['service'], air_C: { absolute: 0, relative: 0 } } },
};

async function savingsOf(rows: readonly Row[]): Promise<{ table: Table; answer: string }> {
  const units = [...new Set(rows.map(({ unit }) => String(unit)))].map((unit) => ({
    unit,
    fuel: 'natural_gas',
    burner: 'power',
    fuel_air_control: 'linkage',
  }));
  const derived = await deriveReadings(rows, { units, parameters: EXACT });
  const economics = units.map(({ unit }) => ({
    unit,
    fuel: 'natural_gas',
    annual_fuel_kWh: 1e6,
    fuel_price_per_kWh: 0.05,
    low_fire_share: 0.6,
  }));
  const read = readParameters({ drift: '' });
  if (read.status !== 'value') throw new Error('parameters');
  const inputs = new Map<string, CellResult>([
    ['readings', { tables: { accepted: tableFrom(readingsSchema, rows) } }],
    ['derive', derived],
    ['register', { tables: { economics: tableFrom(economicsSchema, economics), planning: tableFrom([], []) } }],
  ]);
  const result = await compute(read.value, inputs, CONTEXT);
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  return { table: result.value.tables['savings'], answer: result.value.answer };
}

const spread = (values: readonly number[]): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
};
const NONE: Bias = { name: 'K', o2: 0, flue: 0 };
const draw = (name: string, normal: () => number): Bias => ({
  name,
  o2: normal() * O2_SD * Math.sqrt(BIAS),
  flue: normal() * FLUE_SD * Math.sqrt(BIAS),
});

describe('one visit, 800 draws (the spread of as many is known to 2.5 %)', () => {
  test.each([
    ['one analyzer for both: its bias nearly cancels', true],
    ['another analyzer for what was left: its bias and the first one’s stay', false],
  ])('%s', async (_, same) => {
    const normal = normals(same ? 5 : 6);
    const rows = Array.from({ length: 800 }, (_draw, i) => {
      const first = draw(`A${i}`, normal);
      return visit(`U${i}`, first, same ? first : draw(`B${i}`, normal), normal);
    }).flat();
    const truth = visit('T', NONE, same ? NONE : { ...NONE, name: 'L' }, undefined);
    const [{ table }, { table: plain }] = [await savingsOf(rows), await savingsOf(truth)];
    const half = (numbersOf(plain, 'fuel_saved_pct_upper')[0] - numbersOf(plain, 'fuel_saved_pct_lower')[0]) / 2;
    const drawn = spread([...numbersOf(table, 'fuel_saved_pct')]);
    // Three times the draws’ own 2.5 %.
    expect(Math.abs(half / Z90 / drawn - 1), `${half / Z90} against ${drawn}`).toBeLessThan(0.075);
  });
});

describe('the sum over a fleet of 12 units, 120 draws (known to 6.5 %)', () => {
  test.each([
    ['one analyzer found all and another left all: their biases do not shrink with the number of units', true],
    ['an analyzer of its own for every reading of every unit: they do', false],
  ])('%s', async (_, shared) => {
    const normal = normals(shared ? 7 : 8);
    const fleet = (draws: number, wanted: boolean): Row[] =>
      Array.from({ length: draws }, (_draw, d) => {
        const pair = [draw(`A${d}`, normal), draw(`B${d}`, normal)] as const;
        return Array.from({ length: 12 }, (_unit, u) => {
          const own = shared ? pair : ([draw(`A${d}-${u}`, normal), draw(`B${d}-${u}`, normal)] as const);
          const none = shared ? ['A', 'B'] : [`A${u}`, `B${u}`];
          const [found, left] = wanted ? own : none.map((name): Bias => ({ ...NONE, name }));
          return visit(`U${d}-${u}`, found, left, wanted ? normal : undefined);
        }).flat();
      }).flat();
    const { answer } = await savingsOf(fleet(1, false));
    const [lower, upper] = (/90 % ([\d,.-]+) to ([\d,.-]+)\)/.exec(answer) ?? [])
      .slice(1)
      .map((text) => Number(text.replaceAll(',', '')));
    const { table } = await savingsOf(fleet(120, true));
    const costs = numbersOf(table, 'cost_saved');
    const sums = Array.from({ length: 120 }, (_draw, d) =>
      costs.subarray(12 * d, 12 * d + 12).reduce((sum, cost) => sum + cost, 0),
    );
    const told = (upper - lower) / 2 / Z90;
    expect(Math.abs(told / spread(sums) - 1), `${told} against ${spread(sums)}: ${answer}`).toBeLessThan(0.2);
  });
});
