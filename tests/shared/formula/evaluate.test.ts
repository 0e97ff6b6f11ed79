import { describe, expect, test } from 'vitest';
import { BLOCK_ROWS } from '../../../shared/formula/block-rows.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { calculate, evaluateFormulas } from './evaluate-formula.ts';

const N = Number.NaN;
const percent = (...values: number[]) => ({ unit: '%', values });
const plain = (...values: number[]) => ({ unit: '1', values });

describe('units are carried and converted', () => {
  test('in. w.c. + mbar is in the left one’s unit', () => {
    const { unit, values } = calculate('a + b', {
      a: { unit: "[in_i'H2O]", values: [1] },
      b: { unit: 'mbar', values: [2.4908891] },
    });
    expect(unit).toBe("[in_i'H2O]");
    expect(values[0]).toBeCloseTo(2, 9);
  });

  test('a temperature difference is in kelvin, from °C and °F alike', () => {
    const both = { c: { unit: 'Cel', values: [100] }, f: { unit: '[degF]', values: [122] } };
    expect(calculate('c - f', both)).toMatchObject({ unit: 'K', values: [expect.closeTo(50, 9)] });
    expect(calculate('f - c', both, 'K').values[0]).toBeCloseTo(-50, 9);
    expect(calculate('c + quantity(10, "K")', both)).toMatchObject({ unit: 'Cel', values: [110] });
    expect(calculate('f - quantity(10, "K")', both).values[0]).toBeCloseTo(104, 9);
    expect(calculate('as(c, "degF")', both).values[0]).toBeCloseTo(212, 9);
    expect(calculate('c > 99 ? 1 : 0', both).values[0]).toBe(1);
  });

  test('a bare number takes the unit beside it; a quotient of percents is a plain number', () => {
    const o2 = { o2: percent(5) };
    expect(calculate('20.95 - o2', o2)).toMatchObject({ unit: '%', values: [expect.closeTo(15.95, 12)] });
    expect(calculate('o2 / (20.95 - o2)', o2)).toMatchObject({ unit: '1', values: [expect.closeTo(5 / 15.95, 12)] });
    expect(calculate('o2 / (20.95 - o2)', o2, '%').values[0]).toBeCloseTo(500 / 15.95, 10);
  });

  test('products and quotients find their names', () => {
    const columns = { power: { unit: 'kW', values: [100] }, hours: { unit: 'h', values: [3] } };
    expect(calculate('power * hours', columns)).toMatchObject({ unit: 'kW.h', values: [300] });
    expect(calculate('power * hours', columns, 'MJ').values[0]).toBeCloseTo(1080, 9);
    expect(calculate('power * hours / hours', columns)).toMatchObject({ unit: 'kW' });
  });

  test('ppm over percent', () => {
    const columns = { co: { unit: '[ppm]', values: [360] }, co2: percent(9) };
    expect(calculate('co / co2', columns, '1').values[0]).toBeCloseTo(0.004, 12);
  });

  test('powers and roots', () => {
    const columns = { p: { unit: 'Pa', values: [9] } };
    expect(calculate('sqrt(p) ** 2', columns, 'Pa').values[0]).toBeCloseTo(9, 12);
    expect(calculate('(p / quantity(1, "Pa")) ** 0.5', columns).values[0]).toBe(3);
    expect(calculate('2 ** 3 % 5').values[0]).toBe(3);
  });
});

describe('unknown stays unknown', () => {
  test.each([
    'a + 1',
    '1 - a',
    'a * 0',
    '0 * a',
    'a / 2',
    '2 / a',
    'a ** 2',
    'a % 2',
    'min(a, 1)',
    'max(1, a)',
    'a > 1 ? 2 : 3',
    'exp(a)',
    'round(a)',
    'a == a ? 1 : 2',
    'unknown + 1',
  ])('%s', (formula) => {
    expect(calculate(formula, { a: plain(N) }).values[0]).toBeNaN();
  });

  test('nothing is ever infinite', () => {
    for (const formula of [
      '1 / a',
      'a / a',
      'ln(a)',
      'exp(1000 + a)',
      '(a - 1) ** 0.5',
      'a ** -1',
      '5 % a',
      '1 / (a * 2 - a)',
    ])
      expect(calculate(formula, { a: plain(0) }).values[0], formula).toBeNaN();
  });

  test('known and otherwise', () => {
    const a = { a: plain(N, 3), t: { unit: 'text', values: ['', 'high'] } };
    expect(calculate('known(a) ? 1 : 0', a).values).toEqual([0, 1]);
    expect(calculate('otherwise(a, 7)', a).values).toEqual([7, 3]);
    expect(calculate('known(t) ? 1 : 0', a).values).toEqual([0, 1]);
    expect(calculate('t == "high" ? 1 : 0', a).values).toEqual([N, 1]);
    expect(calculate('t != "high" ? 1 : 0', a).values).toEqual([N, 0]);
  });

  test('logic has three values', () => {
    const a = { a: plain(N, N, 1, 0), b: plain(0, 1, N, N) };
    expect(calculate('a > 0.5 && b > 0.5 ? 1 : 0', a).values).toEqual([0, N, N, 0]);
    expect(calculate('a > 0.5 || b > 0.5 ? 1 : 0', a).values).toEqual([N, 1, 1, N]);
    expect(calculate('!(a > 0.5) ? 1 : 0', a).values).toEqual([N, N, 0, 1]);
  });
});

describe('over a group', () => {
  const columns = {
    x: plain(3, 1, N, 10, 2),
    unit: { unit: 'text', values: ['A', 'A', 'A', 'B', 'A'] },
    fire: { unit: 'text', values: ['high', 'low', 'high', 'high', 'high'] },
  };
  test.each([
    ['mean(x, unit)', [2, 2, 2, 10, 2]],
    ['mean(x, unit, fire)', [2.5, 1, 2.5, 10, 2.5]],
    ['mean(x)', [4, 4, 4, 4, 4]],
    ['median(x, unit)', [2, 2, 2, 10, 2]],
    ['stdev(x, unit)', [1, 1, 1, N, 1]],
    ['count(x, unit)', [3, 3, 3, 1, 3]],
    ['lowest(x, unit)', [1, 1, 1, 10, 1]],
    ['highest(x, unit)', [3, 3, 3, 10, 3]],
    ['first(x, unit)', [3, 3, 3, 10, 3]],
    ['last(x, unit)', [2, 2, 2, 10, 2]],
    ['previous(x, unit)', [N, 3, 1, N, 1]],
    ['rank(x, unit)', [1, 3, N, 1, 2]],
    ['x - mean(x, unit)', [1, -1, N, 0, 0]],
    ['mean(x - mean(x, unit), unit)', [0, 0, 0, 0, 0]],
  ])('%s', (formula, expected) => {
    expect(calculate(formula, columns).values).toEqual(expected);
  });

  test.each([
    ['mean(x, unit)', [1, 0]],
    ['median(x, unit)', [1, 0]],
    ['highest(x, unit)', [1, 0]],
    ['lowest(x, unit)', [0, 0]],
    ['first(x, unit)', [1, 0]],
    ['last(x, unit)', [0, 0]],
    ['count(x, unit)', [0, 0]],
    ['0 - mean(x, unit)', [-1, 0]],
  ])('a bound among the values: %s', (formula, [a, b]) => {
    const bounded = { ...columns, x: { ...columns.x, bounds: [1, 0, 0, 0, 0] } };
    const { bounds } = calculate(formula, bounded);
    expect([bounds[0], bounds[3]]).toEqual([a, b]);
  });
  test('a spread with a bound among the values, and a mean of bounds to both sides, are unknown', () => {
    const at = (bounds: number[]) => ({ ...columns, x: { ...columns.x, bounds } });
    expect(calculate('stdev(x, unit)', at([1, 0, 0, 0, 0])).values[0]).toBeNaN();
    expect(calculate('mean(x, unit)', at([1, -1, 0, 0, 0])).values[0]).toBeNaN();
  });

  test('the mean of n independent readings is known better by the root of n', () => {
    const found = calculate('mean(x, unit)', { ...columns, x: { ...columns.x, sd: 0.3 } });
    expect(found.sd[0]).toBeCloseTo(0.3 / Math.sqrt(3), 12);
  });
});

describe('dates', () => {
  const columns = { on: { unit: 'date', values: [readIsoDate('2024-02-29'), N] } };
  test('year, month, days between', () => {
    expect(calculate('year(on)', columns).values).toEqual([2024, N]);
    expect(calculate('month(on)', columns).values).toEqual([2, N]);
    expect(calculate('days_between(on, date("2024-03-02"))', columns)).toMatchObject({ unit: 'd', values: [2, N] });
    expect(calculate('date("2024-03-02") - on', columns, 'h').values[0]).toBe(48);
    expect(calculate('on + quantity(1, "d") > date("2024-02-29") ? 1 : 0', columns).values).toEqual([1, N]);
  });
});

test('rows beyond the first block are evaluated like those within', () => {
  const rows = 2 * BLOCK_ROWS + 17;
  const values = Array.from({ length: rows }, (_, i) => i + 1);
  const found = evaluateFormulas({ g: 'a * 2', f: 'g / a + a' }, { a: { unit: '1', values, sd: 1 } });
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  expect(found.value.values.every((value, i) => value === i + 3)).toBe(true);
  // 2 a / a + a has the slope 1: what is shared cancels.
  expect(found.value.sd.every((sd) => Math.abs(sd - 1) < 1e-9)).toBe(true);
});

describe('groups by anything', () => {
  const columns = {
    x: { unit: '1', values: [1, 2, 4, 8, 16] },
    unit: { unit: 'text', values: ['a', 'a', 'a', 'b', 'b'] },
    day: { unit: 'date', values: [18_000, 18_001, 18_400, 18_000, Number.NaN] },
  };
  test.each([
    ['mean(x, unit, year(day))', [1.5, 1.5, 4, 8, 16]],
    ['mean(x, day)', [4.5, 2, 4, 4.5, 16]],
    ['count(x, x > 3 ? 1 : 0)', [2, 2, 3, 3, 3]],
    ['max(x, unit)', [4, 4, 4, 16, 16]],
    ['min(x, unit)', [1, 1, 1, 8, 8]],
    ['days_between(previous(day, unit), day)', [Number.NaN, 1, 399, Number.NaN, Number.NaN]],
    ['days_between(first(day, unit), day)', [0, 1, 400, 0, Number.NaN]],
    ['count(day, unit)', [3, 3, 3, 1, 1]],
  ])('%s', (formula, expected) => {
    expect(calculate(formula, columns).values).toEqual(expected);
  });
});
