import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calculate, evaluateFormulas } from './evaluate-formula.ts';

/** Formulas that use every rule of differentiation at least once. */
const FORMULAS = [
  'a + b',
  'a - b + a',
  'a * b',
  'a * a * b',
  'a / b',
  'b / a / a',
  '1 / (a + b)',
  '(a + 1) / (a - b * 3)',
  'sqrt(a * b)',
  'a ** 3 + b ** -2',
  'a ** b',
  '2 ** a',
  'exp(a / 10) * ln(b)',
  'log10(a) + abs(0 - b)',
  'min(a, b) + max(a, b * 2)',
  'a > b ? a * 2 : b * 3',
  'otherwise(u, a) * b',
  'otherwise(a, u) / b',
  'a % 3 + b',
  'enthalpy_rise("CO2", quantity(300, "K") + a * quantity(10, "K")) / quantity(1, "J/mol") + b',
  'as(saturation_temperature(quantity(1000, "Pa") * a * b), "K") / quantity(1, "K")',
  'saturation_pressure(quantity(20, "Cel") + a * quantity(1, "K")) / quantity(1, "Pa") / b',
];

describe('the derivatives are those that finite differences find', () => {
  test.each(FORMULAS)('%s', (formula) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.6, max: 9, noNaN: true }),
        fc.double({ min: 0.6, max: 9, noNaN: true }),
        (a, b) => {
          // Away from the kinks of min, max, % and ?:, where no derivative is.
          fc.pre(
            Math.abs(a - b) > 0.05 &&
              Math.abs(a - 2 * b) > 0.05 &&
              Math.abs(a - 3 * b) > 0.05 &&
              Math.abs((a % 3) - 1.5) < 1.4,
          );
          const at = (x: number, y: number, sdX?: number, sdY?: number) =>
            calculate(formula, {
              a: { unit: '1', values: [x], ...(sdX === undefined ? {} : { sd: sdX }) },
              b: { unit: '1', values: [y], ...(sdY === undefined ? {} : { sd: sdY }) },
              u: { unit: '1', values: [Number.NaN] },
            });
          const h = 1e-5;
          const da = (at(a + h, b).values[0] - at(a - h, b).values[0]) / (2 * h);
          const db = (at(a, b + h).values[0] - at(a, b - h).values[0]) / (2 * h);
          const scale = 1 + Math.abs(da) + Math.abs(db);
          expect(Math.abs(at(a, b, 1).sd[0] - Math.abs(da)) / scale).toBeLessThan(2e-4);
          expect(Math.abs(at(a, b, undefined, 1).sd[0] - Math.abs(db)) / scale).toBeLessThan(2e-4);
          const both = at(a, b, 0.1, 0.2).sd[0];
          expect(Math.abs(both - Math.hypot(0.1 * da, 0.2 * db)) / scale).toBeLessThan(2e-4);
        },
      ),
      { seed: 7, numRuns: 8 },
    );
  });
});

describe('what is shared stays shared', () => {
  const a = { a: { unit: '1', values: [5], sd: 0.5 } };
  test('x - x is certain, x + x is twice as uncertain, through chains too', () => {
    expect(calculate('a - a', a).sd[0]).toBe(0);
    expect(calculate('a + a', a).sd[0]).toBe(1);
    const found = evaluateFormulas({ twice: '2 * a', own: 'twice / a' }, a);
    expect(found).toMatchObject({ value: { values: [2], sd: [expect.closeTo(0, 12)] } });
  });
});

describe('weighted', () => {
  const both = (sdA: number, sdB: number) => ({
    a: { unit: '1', values: [10], sd: sdA },
    b: { unit: '1', values: [12], sd: sdB },
    u: { unit: '1', values: [Number.NaN], sd: 1 },
  });
  test('by the inverse of the variances, as the weighted mean of two results', () => {
    const found = calculate('weighted(a, b)', both(0.3, 0.6));
    // Weights 1/0.09 and 1/0.36: 4 to 1; variance 1 / (1/0.09 + 1/0.36).
    expect(found.values[0]).toBeCloseTo((4 * 10 + 12) / 5, 12);
    expect(found.sd[0]).toBeCloseTo(Math.sqrt(1 / (1 / 0.09 + 1 / 0.36)), 12);
  });
  test('the other where one is unknown; neither where both are; the mean where both are certain', () => {
    expect(calculate('weighted(a, u)', both(0.3, 0.6))).toMatchObject({ values: [10], sd: [0.3] });
    expect(calculate('weighted(u, b)', both(0.3, 0.6))).toMatchObject({ values: [12], sd: [0.6] });
    expect(calculate('weighted(u, u)', both(0.3, 0.6)).values[0]).toBeNaN();
    expect(calculate('weighted(a, b)', both(0, 0)).values[0]).toBe(11);
  });
});

describe('a bound stays a bound where the formula is monotone in it', () => {
  const at = (formula: string, mark = 1) =>
    calculate(formula, {
      co: { unit: '1', values: [4000], sd: 10, bounds: [mark] },
      o2: { unit: '1', values: [5], sd: 0.2 },
      none: { unit: '1', values: [Number.NaN] },
    });
  test.each([
    ['co * 20.9 / (20.9 - o2)', 1],
    ['100 - co / 1000', -1],
    ['0 - co', -1],
    ['sqrt(co) + o2', 1],
    ['otherwise(none, co) * 2', 1],
    ['co > 10 ? o2 : co', 0],
    ['max(co, o2)', 1],
  ])('%s: %s', (formula, bound) => {
    expect(at(formula).bounds[0]).toBe(bound);
    if (bound !== 0) {
      expect(at(formula).values[0]).not.toBeNaN();
      expect(at(formula, -1).bounds[0]).toBe(-bound);
    }
  });
  test.each(['1 / co', 'co * co', 'co - co / 2', 'abs(co - 5000)', 'co % 7', 'o2 > 3 ? co - co * o2 : o2'])(
    '%s is not known to be monotone, so the result is unknown',
    (formula) => {
      expect(at(formula).values[0]).toBeNaN();
      expect(at(formula).bounds[0]).toBe(0);
    },
  );
  test.each([
    ['co > 10 ? 1 : 0', 1],
    ['co < 10 ? 1 : 0', 0],
    ['co > 5000 ? 1 : 0', Number.NaN],
    ['5000 < co ? 1 : 0', Number.NaN],
    ['co < 5000 ? 1 : 0', Number.NaN],
    ['co >= 4000 ? 1 : 0', 1],
    ['co <= 4000 ? 1 : 0', Number.NaN],
    ['co == 4000 ? 1 : 0', Number.NaN],
    ['co == 10 ? 1 : 0', 0],
    ['!(co > 5000) ? 1 : 0', Number.NaN],
    ['0 - co < 5 ? 1 : 0', 1],
    ['1 / co < 5 ? 1 : 0', Number.NaN],
    ['co > 5000 || o2 > 3 ? 1 : 0', 1],
  ])('a bound answers a comparison only where it settles it: %s is %s', (formula, expected) => {
    expect(at(formula).values[0]).toBe(expected);
  });
  test('a branch that the bound settles carries it on', () => {
    expect(at('co > 10 ? co * 2 : 7')).toMatchObject({ values: [8000], bounds: [1] });
  });
  test.each([
    ['1 / co', -1],
    ['co ** 2', 1],
    ['co * co', 1],
    ['sqrt(co) + co', 1],
    ['co ** 0.5 / 2', 1],
    ['o2 / (1 + co)', -1],
    ['(0 - 2) / co', 1],
    ['co * co / (1 / co)', 1],
    ['abs(co)', 1],
    ['o2 > 3 ? co : 2 * co', 1],
    ['2 ** (co / 1000)', 1],
  ])('a concentration is never negative, so %s keeps its direction: %s', (formula, bound) => {
    const of = (mark: number) =>
      calculate(formula, {
        co: { unit: '1', values: [4000], sd: 10, bounds: [mark], nonNegative: true },
        o2: { unit: '1', values: [5], sd: 0.2, nonNegative: true },
      });
    expect(of(1).values[0]).not.toBeNaN();
    expect([of(1).bounds[0], of(-1).bounds[0]]).toEqual([bound, -bound]);
  });
  test.each(['co - co / 2', 'co / (1 + co)', 'abs(co - 5000)', '1 / (co - 5000)', 'co * (5000 - co)'])(
    'nor does that tell the direction of %s',
    (formula) => {
      const co = { unit: '1', values: [4000], sd: 10, bounds: [1], nonNegative: true } as const;
      expect(calculate(formula, { co }).values[0]).toBeNaN();
    },
  );
  test('a row that takes another branch is not touched', () => {
    expect(at('otherwise(o2, co)')).toMatchObject({ values: [5], bounds: [0] });
  });
});
