import { describe, expect, test } from 'vitest';
import { judge, raisedOf, readRaised, reasonsOf } from './judge.ts';

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
    expect(await reasonsOf({ drift })).toEqual(['C-1 high out_of_tolerance', 'C-2 high leaving_tolerance']);
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
    expect(row.evidence).toContain('K-9, which reads CO2 0.28 low everywhere');
    expect(result.remarks.find(({ severity }) => severity === 'warning')?.text).toContain('K-9 reads O2 0.50 ± 0.06');
  });

  test('of an analyzer that cannot be told from its units the sentence says so, and one that measured O2 alone is told in O2', async () => {
    const drift = lanes([{ unit: 'C-1', fire: 'high', level_now: 8.5, probability_out_by_horizon: 0.95 }]);
    const accepted = {
      ...{ unit: ['C-1'], fuel: ['natural_gas'], taken_at: ['2026-03-01'] },
      ...{ fire: ['high'], state: ['as_found'], analyzer: ['K-9'] },
    };
    const read = async (verdict: string) => {
      const biases = { o2_bias_pct: [0.5], o2_bias_pct_sd: [0.06], co2_bias_pct: [Number.NaN] };
      const instruments = { analyzer: ['K-9'], verdict: [verdict], readings: [60], ...biases };
      return (await raisedOf({ drift, accepted, instruments }))[0];
    };
    const confounded = await read('confounded');
    expect(confounded.evidence).toContain('K-9, which nothing tells apart from the units it reads');
    expect(confounded.checkFirst).toMatch(/^Compare K-9 with another analyzer; then/);
    expect((await read('biased')).evidence).toContain('K-9, which reads O2 0.50 high everywhere');
    expect((await read('within')).evidence).not.toContain('K-9');
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
    expect(await reasonsOf({ drift, events: events('laid_up') })).toEqual([]);
    expect(await reasonsOf({ drift, events: events('retired') })).toEqual([]);
    expect(
      await reasonsOf({
        drift,
        events: { unit: ['C-1', 'C-1'], on: ['2026-01-01', '2026-05-01'], event: ['laid_up', 'recommissioned'] },
      }),
    ).toEqual(['C-1 high out_of_tolerance']);
  });

  test('a level inside its band is not called outside, however vague; a vague one is called neither leaving nor, near its band, outside', async () => {
    const drift = lanes([
      { unit: 'C-1', fire: 'high', level_now: 8.8, level_now_sd: 1.1, probability_out_by_horizon: 0.9 },
      { unit: 'C-2', fire: 'high', level_now: 5, level_now_sd: 1.1, probability_out_by_horizon: 1 },
      { unit: 'C-3', fire: 'high', level_now: 8.5, lower_limit: 8.8, upper_limit: 8.8, probability_out_by_horizon: 1 },
      { unit: 'C-4', fire: 'high', level_now: 8.3, level_now_sd: 1.1, probability_out_by_horizon: 1 },
    ]);
    const result = await judge({ drift });
    expect(readRaised(result).map(({ unit, reason }) => `${unit} ${reason}`)).toEqual(['C-2 out_of_tolerance']);
    expect(result.remarks.map(({ text }) => text).join(' ')).toContain('4 fires are known no better');
  });

  test('unknown is never good, and never raised as bad: a lane without band or level raises nothing', async () => {
    const drift = lanes([
      { unit: 'C-1', fire: 'high', level_now: Number.NaN, probability_out_by_horizon: Number.NaN },
      { unit: 'C-2', fire: 'high', level_now: 8.2, lower_limit: Number.NaN, upper_limit: Number.NaN },
    ]);
    expect(await reasonsOf({ drift })).toEqual([]);
  });
});
