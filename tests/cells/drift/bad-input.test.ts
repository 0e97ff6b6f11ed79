import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/drift/kind.ts';
import type { CellContext, CellResult } from '../../../shared/cell.ts';
import { type TableRecord, tableOfRecords } from '../../../shared/foresight/table-of-records.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { derivedSchema } from '../../../shared/schemas/derived.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { limitsSchema, targetsSchema, unitsSchema } from '../../../shared/schemas/register.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';

const context: CellContext = {
  asOf: readIsoDate('2026-03-31'),
  seed: 1,
  signal: new AbortController().signal,
  source: () => undefined,
  progress: () => {},
  pause: async () => {},
};

interface Reading {
  readonly unit?: string;
  readonly on: string;
  readonly o2?: number;
  readonly state?: string;
  readonly fire?: string;
  readonly analyzer?: string;
  readonly adjusted?: string;
}

/** As the derive cell would give it, at reference air already. */
function inputs(readings: readonly Reading[], limits: readonly TableRecord[] = []): Map<string, CellResult> {
  const base = readings.map(({ unit = 'B-1', on, fire = 'high', state = 'as_found' }) => ({
    unit,
    taken_at: readIsoDate(on),
    fire,
    state,
    fuel: 'natural_gas',
  }));
  const accepted = base.map((row, i) => ({
    ...row,
    o2_pct: readings[i].o2 ?? Number.NaN,
    analyzer: readings[i].analyzer ?? 'FA-1',
    adjusted: readings[i].adjusted ?? '',
  }));
  const derived = base.map((row, i) => {
    const o2 = readings[i].o2 ?? Number.NaN;
    const co2 = 11.85 * (1 - o2 / 20.95);
    const measured = {
      o2_pct: o2,
      o2_pct_sd: 0.2,
      o2_from: 'measured',
      o2_reference_pct: o2,
      o2_reference_pct_sd: 0.2,
    };
    return { ...row, ...measured, co2_pct: co2, co2_from: 'calculated', co2_reference_pct: co2 };
  });
  const units = [...new Set(base.map(({ unit }) => unit))].map((unit) => ({
    unit,
    fuel: 'natural_gas',
    burner: 'power',
  }));
  return new Map<string, CellResult>([
    ['readings', { tables: { accepted: tableOfRecords(readingsSchema, accepted) } }],
    ['derive', { tables: { derived: tableOfRecords(derivedSchema, derived) } }],
    [
      'register',
      {
        tables: {
          units: tableOfRecords(unitsSchema, units),
          limits: tableOfRecords(limitsSchema, limits),
          targets: tableOfRecords(targetsSchema, limits),
        },
      },
    ],
  ]);
}

async function drift(readings: readonly Reading[], limits: readonly TableRecord[] = []): Promise<Table> {
  const parameters = kind.readParameters({});
  if (parameters.status !== 'value' || !kind.fit) throw new Error('no parameters');
  const given = inputs(readings, limits);
  const fitted = await kind.fit.compute(parameters.value, given, context);
  if (fitted.status !== 'value') throw new Error(JSON.stringify(fitted));
  const result = await kind.compute(parameters.value, given, context, fitted.value);
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  const described = kind.describe(result.value);
  for (const text of [described.answer, ...described.remarks.map((remark) => remark.text)])
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  for (const table of Object.values(result.value.tables))
    for (const column of table.columns.values()) {
      if (column.kind === 'text') expect(column.levels.join(' ')).not.toMatch(/NaN|undefined/);
      else expect(column.values.some((value) => Math.abs(value) === Number.POSITIVE_INFINITY)).toBe(false);
    }
  return result.value.tables['drift'];
}

const target = {
  unit: 'B-1',
  fuel: 'natural_gas',
  fire: 'high',
  quantity: 'o2_pct',
  target_pct: 4,
  setting_lower_pct: 3.5,
  setting_upper_pct: 4.5,
};
const number = (table: Table, name: string, row = 0): number => numbersOf(table, name)[row];
const word = (table: Table, name: string, row = 0): string => textAt(textsOf(table, name), row);

const yearly = (o2: readonly number[], more: Partial<Reading> = {}): Reading[] =>
  o2.map((value, i) => ({ on: `${2025 - o2.length + i + 1}-10-01`, o2: value, ...more }));

describe('few, odd and missing readings end in a verdict or in an unknown with its reason', () => {
  test('no readings at all', async () => {
    const table = await drift([], [target]);
    expect(table.rows).toBe(1);
    expect(word(table, 'reason')).toMatch(/no usable reading/);
    expect(number(table, 'probability_out_by_horizon')).toBeNaN();
  });

  test('one reading: its level, no rate and no chance', async () => {
    const table = await drift([{ on: '2025-10-01', o2: 4.1 }], [target]);
    expect(number(table, 'level_now')).toBeCloseTo(4.1, 0);
    expect(number(table, 'slope_per_year')).toBeNaN();
    expect(number(table, 'probability_out_by_horizon')).toBeNaN();
    expect(word(table, 'slope_source')).toBe('');
    expect(word(table, 'reason')).toMatch(/^1 visit/);
    expect(number(table, 'readings_used')).toBe(1);
  });

  test('one reading of a unit among many with years of visits: the class speaks for it', async () => {
    const others = ['B-2', 'B-3', 'B-4'].flatMap((unit) => yearly([4, 4.1, 4, 4.2, 4.1], { unit }));
    const table = await drift([{ on: '2025-10-01', o2: 4.1 }, ...others], [target]);
    expect(word(table, 'slope_source')).toBe('class');
    expect(number(table, 'probability_out_by_horizon')).toBeGreaterThan(0);
    expect(number(table, 'probability_out_by_horizon')).toBeLessThan(1);
  });

  test('all readings on one day', async () => {
    const table = await drift(
      ['as_found', 'as_found', 'as_left', 'as_left'].map((state, i) => ({ on: '2025-10-01', o2: 4 + 0.1 * i, state })),
      [target],
    );
    expect(number(table, 'visits_used')).toBe(1);
    expect(number(table, 'slope_lower')).toBeNaN();
    expect(word(table, 'reason')).toMatch(/^1 visit/);
  });

  test('a burner left far off its target is told where it was left, not half way to the target', async () => {
    const table = await drift(
      [
        { on: '2025-10-01', o2: 8.8, state: 'as_found' },
        { on: '2025-10-01', o2: 8.6, state: 'as_left' },
      ],
      [target],
    );
    expect(number(table, 'level_left')).toBeCloseTo(8.6, 1);
  });

  test('identical values for years', async () => {
    const table = await drift(yearly([4, 4, 4, 4, 4, 4, 4, 4]), [target]);
    expect(number(table, 'level_now')).toBeCloseTo(4, 1);
    expect(Math.abs(number(table, 'slope_per_year'))).toBeLessThan(0.05);
    expect(number(table, 'slope_upper')).toBeGreaterThan(number(table, 'slope_lower'));
  });

  test('two units, one analyzer', async () => {
    const table = await drift([...yearly([4, 4.1, 4.2]), ...yearly([4, 3.9, 4.1], { unit: 'B-2' })], [target]);
    expect(table.rows).toBe(2);
    expect(number(table, 'level_now_sd')).toBeGreaterThan(0.05);
  });

  test('a target missing: the last as-left readings, else the class’s usual band', async () => {
    const left = await drift(yearly([4, 4.2, 4.1], { state: 'as_left', adjusted: 'yes' }));
    expect(word(left, 'band_source')).toBe('as_left');
    expect(number(left, 'lower_limit')).toBeCloseTo(3.6, 6);
    const none = await drift(yearly([4, 4.2, 4.1]));
    expect(word(none, 'band_source')).toBe('class_band');
    expect(number(none, 'upper_limit')).toBe(5);
  });

  test('a band of zero width, a band upside down', async () => {
    for (const upper of [3.5, 3.2]) {
      const table = await drift(yearly([4, 4.2, 4.1]), [{ ...target, setting_upper_pct: upper }]);
      expect(word(table, 'reason')).toMatch(/no width/);
      expect(number(table, 'probability_out_by_horizon')).toBeNaN();
      expect(number(table, 'level_now')).toBeGreaterThan(3.5);
    }
  });

  test('a reading 30 years old', async () => {
    const table = await drift([{ on: '1996-03-01', o2: 4 }], [target]);
    expect(word(table, 'reason')).toMatch(/1996-03-01/);
    expect(number(table, 'level_now')).toBeNaN();
  });

  test('readings that hold no number, and a probe out of the flue', async () => {
    const table = await drift([{ on: '2025-10-01' }, { on: '2025-11-01', o2: 20.8 }], [target]);
    expect(number(table, 'readings_used')).toBe(0);
    expect(word(table, 'reason')).toMatch(/no usable reading/);
  });

  test('a slipped digit between good readings is left out and said so; a last reading never is', async () => {
    const good = await drift(yearly([4, 4.1, 4, 4.1, 4.2]), [target]);
    const slipped = await drift(yearly([4, 4.1, 14, 4.1, 4.2]), [target]);
    expect(number(slipped, 'readings_used')).toBe(4);
    expect(number(slipped, 'level_now')).toBeCloseTo(number(good, 'level_now'), 1);
    const last = await drift(yearly([4, 4.1, 4, 4.1, 9]), [target]);
    expect(number(last, 'readings_used')).toBe(5);
    expect(number(last, 'probability_out_by_horizon')).toBeGreaterThan(0.5);
  });

  test('a reading of unknown state tells the level, not the rate, unless nothing was ever adjusted', async () => {
    const table = await drift(yearly([4, 4.5, 5, 5.5], { state: 'unknown' }), [target]);
    expect(number(table, 'level_now')).toBeGreaterThan(5);
    expect(number(table, 'slope_per_year')).toBeNaN();
    expect(word(table, 'reason')).toMatch(/^4 visits to this lane, and in the whole fleet 0 intervals/);
    const untouched = await drift(yearly([4, 4.5, 5, 5.5], { state: 'unknown', adjusted: 'no' }), [target]);
    expect(number(untouched, 'slope_lower')).toBeGreaterThan(0);
  });

  test('units of unknown states that were never adjusted, beside some that were, are the slow ones and speak for none', async () => {
    const state = 'unknown';
    const slow = ['B-1', 'B-2', 'B-3', 'B-4'].flatMap((unit) =>
      yearly([4, 4.1, 4.1, 4.2], { unit, state, adjusted: 'no' }),
    );
    const fast = yearly([4, 4.6, 4, 4.6], { unit: 'B-9', state, adjusted: 'yes' });
    const table = await drift([...slow, ...fast], [target]);
    expect([...numbersOf(table, 'slope_per_year')].every(Number.isNaN)).toBe(true);
  });

  test('visits that tell only what was left, some after an adjustment, speak of no rate; where none adjusted they do', async () => {
    const state = 'as_left';
    const slow = yearly([4, 4.1, 4.1, 4.2], { state, adjusted: 'no' });
    const fast = yearly([4, 4, 4, 4], { unit: 'B-9', state, adjusted: 'yes' });
    const both = await drift([...slow, ...fast], [target]);
    expect([...numbersOf(both, 'slope_per_year')].every(Number.isNaN)).toBe(true);
    expect(number(await drift(slow, [target]), 'slope_per_year')).toBeGreaterThan(0);
  });

  test('what was only ever left, or read on one day only, tells of no rate', async () => {
    const left = await drift(yearly([4, 4, 4, 4, 4], { state: 'as_left', adjusted: 'yes' }), [target]);
    const day = await drift(
      [4, 4.1, 4.2, 4.1].map((o2) => ({ on: '2025-10-01', o2 })),
      [target],
    );
    for (const table of [left, day]) {
      expect(number(table, 'level_now')).toBeCloseTo(4, 0);
      expect(number(table, 'slope_per_year')).toBeNaN();
      expect(number(table, 'probability_out_by_horizon')).toBeNaN();
      expect(word(table, 'reason')).toMatch(/in the whole fleet 0 intervals/);
    }
  });

  test('tables of unequal length are refused with both numbers', async () => {
    const given = inputs(yearly([4, 4.1]));
    const short = inputs(yearly([4]));
    given.set('derive', short.get('derive') ?? { tables: {} });
    const parameters = kind.readParameters({});
    if (parameters.status !== 'value' || !kind.fit) throw new Error('no parameters');
    const fitted = await kind.fit.compute(parameters.value, given, context);
    expect(fitted).toMatchObject({ status: 'error', message: expect.stringMatching(/2 rows and derive 1/) });
  });
});

describe('adjustments and hardware', () => {
  test('an as-left reading starts the level anew; a copied one does not', async () => {
    const visit = (left: number, adjusted: string): Reading[] => [
      ...yearly([4, 4.4, 4.8]),
      { on: '2025-10-01', o2: left, state: 'as_left', adjusted },
    ];
    expect(number(await drift(visit(4, ''), [target]), 'level_left')).toBeLessThan(4.3);
    expect(number(await drift(visit(4.8, ''), [target]), 'level_left')).toBeGreaterThan(4.5);
  });

  test('a setting limit only on one side is a band on one side', async () => {
    const { setting_upper_pct: _, ...oneSided } = target;
    const table = await drift(yearly([4, 4.2, 4.1]), [oneSided]);
    expect(number(table, 'lower_limit')).toBe(3.5);
    expect(number(table, 'upper_limit')).toBeNaN();
    expect(number(table, 'probability_out_by_horizon')).toBeLessThan(0.5);
  });
});
