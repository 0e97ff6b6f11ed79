import { beforeAll, describe, expect, test } from 'vitest';
import type { BackcheckResult } from '../../../cells/backcheck/compute.ts';
import { kind } from '../../../cells/backcheck/kind.ts';
import type { CellContext, CellResult } from '../../../shared/cell.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import { PLAIN_FLEET, simulateFleet } from '../../verify/simulate-fleet.ts';
import { tablesOfFleet } from '../../verify/tables-of-fleet.ts';

const fleet = simulateFleet({ ...PLAIN_FLEET, units: 60, visits: 9, seed: 4 });
const { readings, derived, limits } = tablesOfFleet(fleet);
const asOf = Math.floor(Math.max(...fleet.lastDay)) + 1;
const inputs = new Map<string, CellResult>([
  ['readings', { tables: { accepted: readings } }],
  ['derive', { tables: { derived } }],
  ['register', { tables: { limits } }],
]);
const context: CellContext = {
  asOf,
  seed: 1,
  signal: new AbortController().signal,
  source: () => undefined,
  progress: () => {},
  pause: async () => {},
};

async function lookBack(
  raw: Readonly<Record<string, unknown>>,
  given = inputs,
  on = context,
): Promise<BackcheckResult> {
  const parameters = kind.readParameters(raw);
  if (parameters.status !== 'value') throw new Error(JSON.stringify(parameters));
  const result = await kind.compute(parameters.value, given, on, undefined);
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  return result.value;
}

const column = (result: BackcheckResult, table: string, name: string): number[] => [
  ...numbersOf(result.tables[table], name),
];

describe('looking back over a simulated fleet', () => {
  let result: BackcheckResult;
  beforeAll(async () => {
    result = await lookBack({ years: 3 });
  });

  test('on the first day of each past quarter, the day itself left out', () => {
    expect(result.quarters).toBe(12);
    const said = new Set(column(result, 'forecasts', 'said_on').map(writeDay));
    for (const day of said) expect(day).toMatch(/-(01|04|07|10)-01$/);
    expect(Math.max(...column(result, 'forecasts', 'said_on'))).toBeLessThan(asOf);
  });

  test('what was found was read after it was said', () => {
    const [said, found] = [column(result, 'forecasts', 'said_on'), column(result, 'forecasts', 'found_on')];
    expect(said.length).toBeGreaterThan(300);
    said.forEach((day, row) => {
      expect(found[row]).toBeGreaterThan(day);
    });
  });

  test('the calibration table counts every first forecast once, and says about what was found', () => {
    const [count, said, found] = ['forecasts', 'mean_chance', 'found_outside'].map((name) =>
      column(result, 'calibration', name),
    );
    expect(count.reduce((sum, value) => sum + value, 0)).toBe(result.score.forecasts);
    // Within three standard errors of a share, in every group.
    count.forEach((n, i) => {
      expect(Math.abs(said[i] - found[i])).toBeLessThan(0.05 + 3 * Math.sqrt((said[i] * (1 - said[i])) / n));
    });
  });

  test('intervals of 50, 80 and 95 % hold about as many of the next readings', () => {
    const [levels, shares] = [column(result, 'coverage', 'level'), column(result, 'coverage', 'share')];
    expect(levels).toEqual([0.5, 0.8, 0.95]);
    const error = 3 * Math.sqrt(0.25 / result.score.forecasts);
    levels.forEach((level, i) => {
      expect(Math.abs(shares[i] - level)).toBeLessThan(error);
    });
  });

  test('the notebook beats the last reading alone and a line per unit', () => {
    const methods = result.tables['methods'];
    const name = textsOf(methods, 'method');
    const [own, last, line] = column(result, 'methods', 'skill');
    expect(textAt(name, 0)).toBe('this notebook');
    expect(own).toBeGreaterThan(last);
    expect(own).toBeGreaterThan(line);
  });

  test('raised lanes are counted with those found outside, and the lead is told', () => {
    const { raised, raisedFoundOutside, raisedExpectedOutside, leadDays } = result.score;
    expect(raised).toBeGreaterThan(0);
    expect(raisedFoundOutside).toBeLessThanOrEqual(raised);
    // Found outside or not, each with its chance: three standard deviations of a sum of so many, each at most a half.
    expect(Math.abs(raisedFoundOutside - raisedExpectedOutside)).toBeLessThan(1.5 * Math.sqrt(raised));
    expect(leadDays).toBeGreaterThan(0);
    expect(leadDays).toBeLessThan(366);
  });

  test('page and report show the curve, three tables and the answer', () => {
    const { answer, tables, figures } = kind.describe(result);
    expect(answer).toContain(`${result.score.raised} lanes`);
    expect(answer).toContain(`where ${result.score.raisedExpectedOutside.toFixed(1)} were to be expected`);
    expect(tables.map(({ table }) => table)).toEqual(['methods', 'calibration', 'coverage']);
    expect(figures.map(({ name }) => name)).toEqual(['calibration']);
    expect(kind.files?.(result).map(({ name }) => name)).toEqual(['backcheck.csv']);
  });
});

describe('little to look back on', () => {
  test.each([
    ['before the first reading', 11_000],
    ['after a single visit', 12_400],
  ])('%s: an answer without numbers that do not exist', async (_, day) => {
    const result = await lookBack({ years: 2 }, inputs, { ...context, asOf: day });
    const { answer, remarks, figures } = kind.describe(result);
    expect([answer, ...remarks.map(({ text }) => text)].join(' ')).not.toMatch(/NaN|Infinity|undefined/);
    if (result.score.forecasts === 0) {
      expect(answer).toMatch(/no forecast could be held/);
      expect(figures).toEqual([]);
      expect(result.tables['methods'].rows).toBe(0);
    }
  });

  test('a number out of its range is refused with the range', () => {
    expect(kind.readParameters({ leastChance: 2 })).toMatchObject({
      status: 'error',
      message: expect.stringMatching(/0\.01 to 0\.99/),
    });
  });

  test('a cell that is not there is named', async () => {
    const parameters = kind.readParameters({});
    if (parameters.status !== 'value') throw new Error('no parameters');
    expect(await kind.compute(parameters.value, new Map(), context, undefined)).toMatchObject({
      status: 'error',
      message: expect.stringMatching(/readings/),
    });
  });
});
