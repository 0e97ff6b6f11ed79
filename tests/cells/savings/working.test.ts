import { expect, test } from 'vitest';
import type { SavingsResult } from '../../../cells/savings/compute.ts';
import { numbersOf } from '../../../shared/table/columns.ts';
import type { Working } from '../../../shared/working/working.ts';
import { savingsResultOf } from './savings-of.ts';

const VISIT = [
  { fire: 'high', state: 'as_found', efficiency_gross_pct: 82, o2_pct: 6, o2_reference_pct: 5.8 },
  { fire: 'high', state: 'as_left', efficiency_gross_pct: 82.6, o2_pct: 5, o2_reference_pct: 4.9 },
  { fire: 'low', state: 'as_found', efficiency_gross_pct: 83, o2_pct: 7, o2_reference_pct: 6.8 },
  { fire: 'low', state: 'as_left', efficiency_gross_pct: 83.9, o2_pct: 6, o2_reference_pct: 5.9 },
];
const YEAR = {
  economics: [
    { unit: 'U-1', fuel: 'natural_gas', annual_fuel_kWh: 400000, fuel_price_per_kWh: 0.05, low_fire_share: 0.3 },
  ],
};

function workingOf(result: SavingsResult, column: string): Working {
  const found = result.working(column, 0);
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  return found.value;
}

test.each(['efficiency_found_pct', 'efficiency_left_pct', 'fuel_saved_pct', 'cost_saved', 'co2e_saved_kg'])(
  'the working of %s ends in the number that stands in the table',
  async (column) => {
    const result = await savingsResultOf(VISIT, YEAR);
    const { steps } = workingOf(result, column);
    const table = numbersOf(result.tables['savings'], column)[0];
    expect(steps[steps.length - 1].value).toBeCloseTo(table, 9);
    expect(Number.isFinite(table)).toBe(true);
  },
);

test('whoever reckons with the printed numbers comes to the printed results', async () => {
  const { steps } = workingOf(await savingsResultOf(VISIT, YEAR), 'fuel_saved_pct');
  const saved = steps.filter(({ name }) => name.startsWith('saved_'));
  expect(saved).toHaveLength(2);
  for (const { numbers, value } of saved) {
    const [, found, left] = /1 − ([\d.]+) % \/ ([\d.]+) %$/.exec(numbers) ?? [];
    expect(100 * (1 - Number(found) / Number(left))).toBeCloseTo(value, 4);
  }
  const last = steps[steps.length - 1];
  const parts = [...last.numbers.matchAll(/([\d.]+) × ([−\d.]+) %/g)].map(([, share, part]) =>
    [share, part].map(Number),
  );
  expect(parts.map(([share]) => share).sort()).toEqual([0.3, 0.7]);
  expect(parts.reduce((sum, [share, part]) => sum + share * part, 0)).toBeCloseTo(last.value, 4);
});

test('with readings taken as they are, the relation is that of DOE Steam Tip Sheet 4: 1 - E1/E2', async () => {
  // 1 - 82/82.6 and 1 - 83/83.9, by 0.7 and 0.3 of the fuel: arithmetic by hand.
  const { steps } = workingOf(await savingsResultOf(VISIT, YEAR, { air: 'measured' }), 'fuel_saved_pct');
  expect(steps[steps.length - 1].value).toBeCloseTo(100 * (0.7 * (1 - 82 / 82.6) + 0.3 * (1 - 83 / 83.9)), 9);
});

test('its uncertainty is made of O2 and flue temperature over both fires, and they add up', async () => {
  const result = await savingsResultOf(VISIT, YEAR);
  for (const column of ['fuel_saved_pct', 'cost_saved']) {
    const { budget, steps } = workingOf(result, column);
    expect(budget.map(({ input }) => input).sort()).toEqual(['reading.flue_C', 'reading.o2_pct']);
    expect(budget.reduce((sum, { percent }) => sum + percent, 0)).toBeCloseTo(100, 9);
    const whole = Math.sqrt(budget.reduce((sum, { contribution }) => sum + contribution ** 2, 0));
    expect(whole).toBeCloseTo(steps[steps.length - 1].sd, 9);
  }
});

test('leads on to the derived efficiencies of the readings that were compared', async () => {
  const { inputs, readings } = workingOf(await savingsResultOf(VISIT, YEAR), 'fuel_saved_pct');
  const onward = inputs.flatMap(({ from }) => (from?.column === 'efficiency_gross_pct' ? [from.row] : []));
  expect([...onward].sort()).toEqual([0, 1, 2, 3]);
  expect(readings).toHaveLength(4);
});

test('what has no working, or nothing to compare, says so in one sentence', async () => {
  const result = await savingsResultOf(VISIT, YEAR);
  expect(result.working('persistence_years', 0)).toMatchObject({
    status: 'error',
    message: expect.stringContaining('fuel_saved_pct'),
  });
});
