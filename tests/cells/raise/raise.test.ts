import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/raise/kind.ts';
import { judge, raisedExample, raisedOf, readRaised } from './judge.ts';

const reasons = async (...given: Parameters<typeof raisedOf>): Promise<string[]> =>
  (await raisedOf(...given)).map(({ unit, fire, reason }) => [unit, fire, reason].filter((part) => part).join(' '));

describe('the example: every tier, in order', () => {
  test('safety before open before supply before tolerance before data', async () => {
    const result = await raisedExample();
    expect(readRaised(result).map(({ unit, reason, tier }) => `${tier}: ${unit} ${reason}`)).toEqual([
      'safety: A-3 co_high',
      'safety: A-3 supply_over_maximum',
      'open: A-1 not_returned_to_service',
      'supply: A-1 supply_drop_growing',
      'tolerance: A-1 leaving_tolerance',
      'data: A-5 no_data',
      'data: A-4 no_data',
    ]);
    expect(result.answer).toBe('4 of 5 units raised: 1 safety, 1 open, 2 data.');
  });

  test('evidence is one sentence with its numbers, and no unknown number is printed', async () => {
    for (const { evidence, checkFirst } of readRaised(await raisedExample())) {
      for (const sentence of [evidence, checkFirst]) {
        expect(sentence).toMatch(/^[A-Z][^\n]+\.$/);
        expect(sentence).not.toMatch(/NaN|Infinity|undefined|unknown/);
      }
      expect(evidence).toMatch(/\d/);
    }
  });

  test('its lanes come from what drift and supply worked out', async () => {
    const [lanes] = kind.lanes?.(await raisedExample(), ['A-1']) ?? [];
    expect(lanes.place).toBe('Laundry');
    expect(lanes.lanes.map(({ fire, lower, upper }) => [fire, lower, upper])).toEqual([['high', 4, 6]]);
  });
});

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
    return reasons({ accepted: table, derived: derived(table) });
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
    expect(await reasons({ accepted: table, derived: derived(table) })).toEqual([
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
    expect(await reasons(given)).toEqual(['B-1 high co_high']);
    expect(await reasons(given, { coBasis: 'at_3pct_o2' })).toEqual([]);
    expect(await reasons(given, { coBasis: 'at_3pct_o2', coLimitPpm: 300 })).toEqual(['B-1 high co_high']);
  });

  test('a retired unit is not raised, a laid-up one is', async () => {
    const table = accepted([['2025-01-10', 'high', 'as_left', 900, 4]]);
    const event = (name: string) => ({ unit: ['B-1'], on: ['2025-06-01'], event: [name] });
    const given = { accepted: table, derived: derived(table) };
    expect(await reasons({ ...given, events: event('retired') })).toEqual([]);
    expect(await reasons({ ...given, events: event('laid_up') })).toEqual(['B-1 high co_high']);
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

describe('gas supply', () => {
  const supplyRow = (given: Record<string, number | string | null>) =>
    Object.fromEntries(
      Object.entries({
        unit: 'B-1',
        readings_used: 7,
        last_read_on: '2026-03-01',
        horizon_on: '2027-06-01',
        ...given,
      }).map(([name, value]) => [name, [value]]),
    );

  test('above the plate’s maximum: shut and correct first; a later reading below closes it', async () => {
    const accepted = (statics: readonly number[]) => ({
      unit: statics.map(() => 'B-1'),
      taken_at: statics.map((_, i) => `2026-0${i + 1}-10`),
      fire: statics.map(() => 'high'),
      state: statics.map(() => 'as_found'),
      supply_static_Pa: statics,
    });
    // 14 in. w.c. = 3487.2 Pa, a usual plate maximum for natural gas.
    const limits = { unit: ['B-1'], supply_max_Pa: [3487.2447] };
    const [row] = await raisedOf({ accepted: accepted([2000, 3600]), 'supply-limits': limits });
    expect(row).toMatchObject({ reason: 'supply_over_maximum', tier: 'safety' });
    expect(row.evidence).toContain('3600 Pa (14.45 in. w.c.)');
    expect(row.checkFirst).toMatch(/^Shut the gas and correct the supply first/);
    expect(await reasons({ accepted: accepted([3600, 2000]), 'supply-limits': limits })).toEqual([]);
    expect(await reasons({ accepted: accepted([3487.2447]), 'supply-limits': limits })).toEqual([]);
  });

  test('under the minimum: do not tune, find out why', async () => {
    const [row] = await raisedOf({
      supply: supplyRow({ running_now_Pa: 1100, supply_min_Pa: 1245, verdict: 'unknown' }),
    });
    expect(row).toMatchObject({ reason: 'supply_under_minimum', tier: 'supply' });
    expect(row.checkFirst).toMatch(/^Do not tune; find out why/);
  });

  test('over comes before growing; within and unknown raise nothing', async () => {
    const table = (...verdicts: string[]) => ({
      unit: verdicts.map((_, i) => `B-${i}`),
      verdict: verdicts,
      drop_now_Pa: verdicts.map(() => 200),
      drop_limit_Pa: verdicts.map(() => 249),
      drop_slope_Pa_per_year: verdicts.map(() => 20),
    });
    expect(await reasons({ supply: table('within', 'growing', 'over', 'unknown') })).toEqual([
      'B-2 supply_drop_over',
      'B-1 supply_drop_growing',
    ]);
  });
});

describe('tolerance', () => {
  const lanes = (rows: readonly Record<string, string | number>[]) => {
    const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
    const whole = rows.map((row) => ({
      fuel: 'natural_gas',
      quantity: 'co2_pct',
      lower_limit: 8.4,
      upper_limit: 9.2,
      level_now_sd: 0.08,
      slope_per_year: -0.1,
      horizon_on: '2027-06-01',
      readings_used: 8,
      ...row,
    }));
    const all = [...new Set([...names, ...Object.keys(whole[0])])];
    return Object.fromEntries(
      all.map((name) => [name, whole.map((row) => (row as Record<string, string | number>)[name] ?? null)]),
    );
  };

  test('outside now, leaving, and neither', async () => {
    const drift = lanes([
      { unit: 'C-1', fire: 'high', level_now: 8.2, probability_out_by_horizon: 1 },
      { unit: 'C-2', fire: 'high', level_now: 8.5, probability_out_by_horizon: 0.93 },
      { unit: 'C-3', fire: 'high', level_now: 8.8, probability_out_by_horizon: 0.2 },
    ]);
    expect(await reasons({ drift })).toEqual(['C-1 high out_of_tolerance', 'C-2 high leaving_tolerance']);
  });

  test('the list is cut where its expected share of false entries would exceed the rate, and says how many to expect', async () => {
    const chances = [0.99, 0.97, 0.9, 0.8, 0.6, 0.4];
    const drift = lanes(
      chances.map((chance, i) => ({
        unit: `C-${i}`,
        fire: 'high',
        level_now: 8.6,
        probability_out_by_horizon: chance,
      })),
    );
    // Means of one less the chance: .010 .020 .0467 .085 .148; a rate of 10 % keeps four, 34 hundredths expected inside.
    const result = await judge({ drift }, { falseDiscoveryRate: 0.1 });
    const raised = readRaised(result);
    expect(raised.map(({ unit }) => unit)).toEqual(['C-0', 'C-1', 'C-2', 'C-3']);
    expect(raised.at(-1)?.falseDiscoveryRate).toBeCloseTo(0.085, 12);
    expect(result.remarks.map(({ text }) => text).join('\n')).toContain(
      'Of 4 fires raised as leaving tolerance, expect 0.3 to be found inside the band.',
    );
    expect((await raisedOf({ drift }, { falseDiscoveryRate: 1 })).length).toBe(5);
  });

  test('analyzer before unit: a biased analyzer is named first and remarked on', async () => {
    const drift = lanes([{ unit: 'C-1', fire: 'high', level_now: 8.5, probability_out_by_horizon: 0.95 }]);
    const accepted = {
      unit: ['C-1'],
      fuel: ['natural_gas'],
      taken_at: ['2026-03-01'],
      fire: ['high'],
      state: ['as_found'],
      analyzer: ['K-9'],
    };
    const instruments = {
      analyzer: ['K-9'],
      verdict: ['biased'],
      readings: [60],
      o2_bias_pct: [0.5],
      o2_bias_pct_sd: [0.06],
      co2_bias_pct: [-0.28],
    };
    const result = await judge({ drift, accepted, instruments });
    const [row] = readRaised(result);
    expect(row.checkFirst).toMatch(/^Compare K-9 with another analyzer; then/);
    expect(row.evidence).toContain('K-9, which reads 0.28 low everywhere');
    expect(result.remarks.find(({ severity }) => severity === 'warning')?.text).toContain('K-9 reads O2 0.50 ± 0.06');
  });

  test('supply first only where it is low enough to move O2', async () => {
    const drift = lanes([{ unit: 'C-1', fire: 'high', level_now: 8.5, probability_out_by_horizon: 0.95 }]);
    const supply = (running: number) => ({
      unit: ['C-1'],
      verdict: ['growing'],
      running_now_Pa: [running],
      supply_min_Pa: [1245],
      drop_now_Pa: [200],
    });
    const first = async (running: number): Promise<string> =>
      (await raisedOf({ drift, supply: supply(running) })).find(({ tier }) => tier === 'tolerance')?.checkFirst ?? '';
    expect(await first(1300)).toMatch(/^Gas supply first, it is low enough to move O2/);
    expect(await first(1900)).not.toContain('low enough');
  });

  test('both fires alike is the unit, one fire alone is that fire', async () => {
    const at = (fire: string, slope: number) => ({
      unit: 'C-1',
      fire,
      level_now: 8.6,
      slope_per_year: slope,
      probability_out_by_horizon: 0.97,
    });
    const both = await raisedOf({ drift: lanes([at('high', 0.1), at('low', 0.1)]) });
    expect(both.every(({ checkFirst }) => checkFirst.startsWith('Both fires go rich alike'))).toBe(true);
    const [one] = await raisedOf({ drift: lanes([at('high', 0.1)]) });
    expect(one.checkFirst).toMatch(/^Only this fire moves/);
  });

  test('retired and laid-up units are left out', async () => {
    const drift = lanes([{ unit: 'C-1', fire: 'high', level_now: 8.2, probability_out_by_horizon: 1 }]);
    const events = (event: string) => ({ unit: ['C-1'], on: ['2026-01-01'], event: [event] });
    expect(await reasons({ drift, events: events('laid_up') })).toEqual([]);
    expect(await reasons({ drift, events: events('retired') })).toEqual([]);
    expect(
      await reasons({
        drift,
        events: { unit: ['C-1', 'C-1'], on: ['2026-01-01', '2026-05-01'], event: ['laid_up', 'recommissioned'] },
      }),
    ).toEqual(['C-1 high out_of_tolerance']);
  });

  test('a level inside its band is not called outside, however vague; a vague one is not called leaving either', async () => {
    const drift = lanes([
      { unit: 'C-1', fire: 'high', level_now: 8.8, level_now_sd: 1.1, probability_out_by_horizon: 0.9 },
      { unit: 'C-2', fire: 'high', level_now: 5, level_now_sd: 1.1, probability_out_by_horizon: 1 },
      { unit: 'C-3', fire: 'high', level_now: 8.5, lower_limit: 8.8, upper_limit: 8.8, probability_out_by_horizon: 1 },
    ]);
    const result = await judge({ drift });
    expect(readRaised(result).map(({ unit, reason }) => `${unit} ${reason}`)).toEqual(['C-2 out_of_tolerance']);
    expect(result.remarks.map(({ text }) => text).join(' ')).toContain('3 fires are known no better');
  });

  test('unknown is never good, and never raised as bad: a lane without band or level raises nothing', async () => {
    const drift = lanes([
      { unit: 'C-1', fire: 'high', level_now: Number.NaN, probability_out_by_horizon: Number.NaN },
      { unit: 'C-2', fire: 'high', level_now: 8.2, lower_limit: Number.NaN, upper_limit: Number.NaN },
    ]);
    expect(await reasons({ drift })).toEqual([]);
  });
});

describe('rich in summer', () => {
  const read = (burner: string, airSource: string, o2: number, trim = '') => ({
    accepted: {
      unit: ['D-1'],
      fuel: ['natural_gas'],
      taken_at: ['2026-01-20'],
      fire: ['high'],
      state: ['as_left'],
    },
    derived: {
      unit: ['D-1'],
      fuel: ['natural_gas'],
      taken_at: ['2026-01-20'],
      fire: ['high'],
      state: ['as_left'],
      o2_reference_pct: [o2],
      o2_reference_pct_sd: [0.2],
    },
    units: { unit: ['D-1'], fuel: ['natural_gas'], burner: [burner], air_source: [airSource], trim: [trim] },
  });

  test('a fan burner set lean enough in the cold only: O2 falls about 0.063 a degree, half of that in premix', async () => {
    // Constant-volume fan, fixed fuel: 3.0 % at 70 °F is 1.9 % at 100 °F (ideal-gas law, computed for the trade).
    const hot = { summerAirC: 37.8, richO2Pct: 2.6 };
    const [row] = await raisedOf(read('power', 'outside', 3), hot);
    expect(row).toMatchObject({ reason: 'rich_in_summer', tier: 'tolerance', fire: 'high' });
    // 1.1 points for 30 °F; the reference is 2 °F colder than 70 °F, hence a tenth to spare.
    expect(Math.abs(Number(/about (\d\.\d) %/.exec(row.evidence)?.[1]) - 1.9)).toBeLessThan(0.15);
    const [premix] = await raisedOf(read('premix', 'outside', 3), hot);
    expect(Math.abs(Number(/about (\d\.\d) %/.exec(premix.evidence)?.[1]) - 2.45)).toBeLessThan(0.15);
    expect(await reasons(read('power', 'outside', 3))).toEqual([]);
  });

  test('not with trim, not from the boiler room, not where burner or air source is unknown', async () => {
    for (const given of [
      read('power', 'outside', 2, 'yes'),
      read('power', 'room', 2),
      read('', 'outside', 2),
      read('power', '', 2),
      read('atmospheric', 'outside', 2),
    ])
      expect(await reasons(given)).toEqual([]);
  });
});

describe('no data', () => {
  const units = (given: Record<string, string | null> = {}) =>
    Object.fromEntries(
      Object.entries({ unit: 'E-1', fuel: 'natural_gas', ...given }).map(([name, value]) => [name, [value]]),
    );
  const last = (day: string) => ({
    unit: ['E-1'],
    fuel: ['natural_gas'],
    taken_at: [day],
    fire: ['high'],
    state: ['as_found'],
  });

  test('after 18 months, or the longer interval that the register allows', async () => {
    expect(await reasons({ units: units(), accepted: last('2025-02-01') })).toEqual([]);
    expect(await reasons({ units: units(), accepted: last('2024-10-01') })).toEqual(['E-1 no_data']);
    const planning = { unit: ['E-1'], max_interval_months: [24] };
    expect(await reasons({ units: units(), planning, accepted: last('2024-10-01') })).toEqual([]);
  });

  test('a unit never read is raised, one just installed or out of use is not', async () => {
    expect(await reasons({ units: units() })).toEqual(['E-1 no_data']);
    expect(await reasons({ units: units({ installed_on: '2026-03-01' }) })).toEqual([]);
    expect(await reasons({ units: units({ retired_on: '2026-03-01' }) })).toEqual([]);
    const events = { unit: ['E-1'], on: ['2024-12-01'], event: ['laid_up'] };
    expect(await reasons({ units: units(), accepted: last('2024-10-01'), events })).toEqual([]);
  });
});

describe('no data, though there are readings', () => {
  const evidence = async (columns: Record<string, string[]>): Promise<string[]> =>
    (await raisedOf({ units: { unit: ['E-1'], fuel: ['natural_gas'] }, accepted: columns })).map((one) => one.evidence);
  const many = (fuel: string, state: string) => ({
    unit: Array<string>(25).fill('E-1'),
    fuel: Array<string>(25).fill(fuel),
    taken_at: Array<string>(25).fill('2026-05-01'),
    fire: Array<string>(25).fill('high'),
    state: Array<string>(25).fill(state),
  });

  test('trial readings are counted and say neither found nor left', async () => {
    const [found] = await evidence(many('natural_gas', 'trial'));
    expect(found).toMatch(/^25 trial readings, none as found or as left/);
    expect(await evidence(many('natural_gas', 'unknown'))).toEqual([]);
  });

  test('readings on another fuel are counted', async () => {
    expect(await evidence(many('no2_oil', 'as_left'))).toEqual([
      expect.stringMatching(/^None of its 25 readings is on natural gas/),
    ]);
  });
});

describe('parameters and inputs', () => {
  test('a cell of another kind is named with what it lacks', async () => {
    await expect(judge({ drift: { unit: ['A'] } }, { supply: 'drift' })).rejects.toThrow(
      /raise: table supply of cell drift lacks unit, verdict; name a cell of the right kind/,
    );
  });

  test('nothing at all raises nothing', async () => {
    expect((await judge({})).answer).toBe('None of 0 units raised.');
  });
});
