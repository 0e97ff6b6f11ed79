import { describe, expect, test } from 'vitest';
import { judge, raisedOf, readRaised, reasonsOf } from './judge.ts';

describe('high CO', () => {
  const accepted = (rows: readonly (readonly [string, string, string, number | string | null, number | null])[]) => ({
    unit: rows.map(() => 'B-1'),
    fuel: rows.map(() => 'natural_gas'),
    taken_at: rows.map(([day]) => day),
    fire: rows.map(([, fire]) => fire),
    state: rows.map(([, , state]) => state),
    co_ppm: rows.map(([, , , co]) => co),
    o2_pct: rows.map(([, , , , o2]) => o2),
  });
  // Air-free CO = CO x 20.9 / (20.9 - O2): trade-school example, 87 ppm at 5 % O2 is 114 ppm.
  const derived = (table: ReturnType<typeof accepted>) => ({
    ...table,
    co_air_free_ppm: table.co_ppm.map((co, row) => {
      const [ppm, o2] = [Number(String(co ?? Number.NaN).replace(/[<>]/, '')), table.o2_pct[row]];
      return co === null || o2 === null ? null : (ppm * 20.9) / (20.9 - o2);
    }),
  });
  const judged = async (...rows: Parameters<typeof accepted>[0]) => {
    const table = accepted(rows);
    return reasonsOf({ accepted: table, derived: derived(table) });
  };

  test('is judged air-free: 300 ppm at 6 % O2 is 421, 87 ppm at 5 % O2 is 114', async () => {
    expect(await judged(['2026-01-10', 'high', 'as_found', 300, 6])).toEqual(['B-1 high co_high']);
    expect(await judged(['2026-01-10', 'high', 'as_found', 87, 5])).toEqual([]);
  });

  test('stays open until a later reading at the same fire is below, however old it is', async () => {
    expect(await judged(['2012-01-10', 'high', 'as_left', 900, 4])).toContain('B-1 high co_high');
    expect(await judged(['2025-01-10', 'high', 'as_left', 900, 4], ['2026-01-10', 'low', 'as_left', 20, 6])).toEqual([
      'B-1 high co_high',
    ]);
    expect(await judged(['2025-01-10', 'high', 'as_left', 900, 4], ['2026-01-10', 'high', 'as_left', 20, 6])).toEqual(
      [],
    );
  });

  test('is closed by the as-left reading of the same visit, not by its own as-found twin', async () => {
    expect(await judged(['2026-01-10', 'high', 'as_found', 900, 4], ['2026-01-10', 'high', 'as_left', 20, 5])).toEqual(
      [],
    );
    expect(await judged(['2026-01-10', 'high', 'as_found', 20, 5], ['2026-01-10', 'high', 'as_left', 900, 4])).toEqual([
      'B-1 high co_high',
    ]);
    expect(await judged(['2026-01-10', 'high', 'as_found', 20, 5], ['2026-01-10', 'high', 'as_found', 900, 4])).toEqual(
      ['B-1 high co_high'],
    );
  });

  test('an evening reading is not closed by the morning’s as-left', async () => {
    expect(
      await judged(['2026-01-10T09:00', 'high', 'as_left', 20, 5], ['2026-01-10T18:00', 'high', 'as_found', 900, 4]),
    ).toEqual(['B-1 high co_high']);
  });

  test('over the sensor’s range is at least that, comes first, and needs no O2', async () => {
    const table = {
      ...accepted([
        ['2026-01-10', 'high', 'as_found', 3900, 4],
        ['2026-01-10', 'high', 'as_found', '>2000', null],
      ]),
      unit: ['B-1', 'B-2'],
    };
    expect(await reasonsOf({ accepted: table, derived: derived(table) })).toEqual([
      'B-2 high co_over_range',
      'B-1 high co_high',
    ]);
  });

  test('is not closed by a reading that says nothing: no CO, no O2, or a probe in the open air', async () => {
    const open = ['2025-01-10', 'high', 'as_left', 900, 4] as const;
    for (const [co, o2] of [
      [null, 5],
      [20, null],
      [20, 19.8],
    ] as const)
      expect(await judged(open, ['2026-01-10', 'high', 'as_left', co, o2])).toEqual(['B-1 high co_high']);
  });

  test('another limit, another basis: 410 ppm air-free is 351 at 3 % O2', async () => {
    const table = accepted([['2026-01-10', 'high', 'as_found', 410, 0]]);
    const given = {
      accepted: table,
      derived: { ...derived(table), co_at_3pct_o2_ppm: [(410 * 17.9) / 20.9] },
    };
    expect(await reasonsOf(given)).toEqual(['B-1 high co_high']);
    expect(await reasonsOf(given, { coBasis: 'at_3pct_o2' })).toEqual([]);
    expect(await reasonsOf(given, { coBasis: 'at_3pct_o2', coLimitPpm: 300 })).toEqual(['B-1 high co_high']);
  });

  test('a retired unit is not raised, a laid-up one is', async () => {
    const table = accepted([['2025-01-10', 'high', 'as_left', 900, 4]]);
    const event = (name: string) => ({ unit: ['B-1'], on: ['2025-06-01'], event: [name] });
    const given = { accepted: table, derived: derived(table) };
    expect(await reasonsOf({ ...given, events: event('retired') })).toEqual([]);
    expect(await reasonsOf({ ...given, events: event('laid_up') })).toEqual(['B-1 high co_high']);
  });

  test('below the limit by less than the guard band is not raised, and not passed over in silence', async () => {
    const table = accepted([['2026-01-10', 'high', 'as_found', 300, 4.5]]);
    const given = { accepted: table, derived: { ...derived(table), co_air_free_ppm_sd: [15] } };
    const result = await judge(given);
    expect(readRaised(result)).toEqual([]);
    // 300 x 20.9 / 16.4 = 382; the guard band reaches down to 400 - 1.64 x 15 = 375.
    expect(result.remarks.find(({ severity }) => severity === 'warning')?.text).toContain(
      'B-1 high fire 382 ± 15 on 2026-01-10',
    );
    const narrow = await judge({ ...given, derived: { ...given.derived, co_air_free_ppm_sd: [5] } });
    expect(narrow.remarks.some(({ severity }) => severity === 'warning')).toBe(false);
  });

  test('says nothing about which way the air should go', async () => {
    const table = accepted([['2026-01-10', 'high', 'as_found', 900, 4]]);
    const [row] = await raisedOf({ accepted: table, derived: derived(table) });
    expect(row.checkFirst).toContain('does not say which way the air should go');
    expect(`${row.evidence} ${row.checkFirst}`).not.toMatch(
      /(add|more|less|cut|reduce|open up|close down) (the )?air\b/i,
    );
  });
});
