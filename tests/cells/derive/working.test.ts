import { describe, expect, test } from 'vitest';
import type { Working } from '../../../shared/working/working.ts';
import { cellOf, deriveReadings, type Row } from './derive-readings.ts';

async function workingOf(rows: readonly Row[], column: string, row = 0, parameters: unknown = {}): Promise<Working> {
  const result = await deriveReadings(rows, { parameters });
  const found = result.working(column, row);
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  return found.value;
}

const READING = { o2_pct: 5, flue_C: 200, air_C: 20, co_ppm: 87 };

describe('the working of a number', () => {
  test('runs from the readings up, with symbols, then with numbers and units, then the result', async () => {
    const working = await workingOf([READING], 'co_air_free_ppm');
    expect(working.steps.map(({ name }) => name).slice(-3)).toEqual(['o2_read_pct', 'o2_pct', 'co_air_free_ppm']);
    const last = working.steps[working.steps.length - 1];
    expect(last.symbols).toBe('CO,af = otherwise(CO,read × O2,20.9 / (O2,20.9 − O2), CO,af,read)');
    expect(last.numbers).toBe('CO,af = otherwise(87 ppm × 20.9 % / (20.9 % − 5 %), unknown)');
    expect(last.result).toBe('114.36 ppm');
    expect(last.source).toBe('airFreeCo');
  });

  test('ends in the number that stands in the table, with its uncertainty', async () => {
    const result = await deriveReadings([{}, READING]);
    for (const column of ['efficiency_gross_pct', 'dew_point_C', 'o2_reference_pct', 'lambda']) {
      const found = result.working(column, 1);
      if (found.status !== 'value') throw new Error(column);
      const last = found.value.steps[found.value.steps.length - 1];
      expect(last.value).toBe(cellOf(result, 1, column));
      expect(last.sd).toBeCloseTo(Number(cellOf(result, 1, `${column}_sd`)), 12);
      const sum = found.value.budget.reduce((total, { contribution }) => total + contribution ** 2, 0);
      expect(Math.sqrt(sum)).toBeCloseTo(last.sd, 12);
      expect(found.value.budget.reduce((total, { percent }) => total + percent, 0)).toBeCloseTo(100, 9);
    }
  });

  test('the budget names each input with its part, greatest first', async () => {
    const { budget } = await workingOf([READING], 'efficiency_gross_pct');
    expect(budget[0]).toMatchObject({ input: 'reading.o2_pct', title: 'O2 as read', value: 5, sd: 0.17 });
    const parts = budget.map(({ percent }) => percent);
    expect([...parts].sort((a, b) => b - a)).toEqual(parts);
    expect(budget.map(({ input }) => input)).toContain('reading.flue_C');
  });

  test('relations that have no part because their inputs are missing are left out', async () => {
    const { steps } = await workingOf([READING], 'o2_pct');
    expect(steps.map(({ name }) => name)).not.toContain('wet_excess_air');
  });

  test('what has no part in a number that is known is left out: CO2 where O2 was read', async () => {
    const { steps, inputs } = await workingOf([{ ...READING, co2_pct: 9 }], 'excess_air_from_o2');
    expect(steps.map(({ name }) => name)).not.toContain('o2_from_co2_pct');
    expect(inputs.map(({ name }) => name)).not.toContain('reading.co2_pct');
  });

  test('says which reading it comes from, which of its columns it rests on, and which functions it calls', async () => {
    const { readings, functions } = await workingOf([{ ...READING, source_file: 'a.csv', source_line: 7 }], 'lambda');
    expect(readings).toHaveLength(1);
    expect(readings[0]).toMatchObject({ file: 'a.csv', line: 7, fields: expect.arrayContaining(['o2_pct']) });
    expect(functions.map(({ usage }) => usage)).toContain('weighted(x, y)');
  });

  test('commas stand without a space only before an index, however the user writes', async () => {
    const parameters = { columns: [{ name: 'least', unit: '%', formula: 'min(o2_pct,co2_pct)' }] };
    const { steps } = await workingOf([READING], 'least', 0, parameters);
    expect(steps[steps.length - 1].symbols).toBe('least = min(O2, CO2)');
  });

  test('an unknown result shows the whole chain, so that one sees what is missing', async () => {
    const { steps, budget } = await workingOf([{ flue_C: 200 }], 'efficiency_gross_pct');
    expect(budget).toEqual([]);
    expect(steps[steps.length - 1].result).toBe('unknown');
    expect(steps.map(({ name }) => name)).toContain('wet_excess_air');
  });

  test('a bound is said to be one', async () => {
    const { steps } = await workingOf([{ o2_pct: 5, co_ppm: '>4000' }], 'co_air_free_ppm');
    expect(steps[steps.length - 1].result).toBe('at least 5257.9 ppm');
    expect(steps[steps.length - 1].numbers).toContain('at least 4000 ppm');
  });

  test('a column of one’s own is shown like the others, over a group too', async () => {
    const parameters = { columns: [{ name: 'off_mean', unit: '%', formula: 'o2_pct - mean(o2_pct, unit)' }] };
    const { steps } = await workingOf([READING, { ...READING, o2_pct: 7 }], 'off_mean', 1, parameters);
    expect(steps[steps.length - 1]).toMatchObject({ result: '1 %', source: '' });
  });

  test('a name that is no relation is answered with the nearest', async () => {
    const result = await deriveReadings([READING]);
    expect(result.working('efficency_gross_pct', 0)).toMatchObject({
      status: 'error',
      message: expect.stringContaining('did you mean efficiency_gross_pct?'),
    });
  });
});
