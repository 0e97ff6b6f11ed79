import { describe, expect, test } from 'vitest';
import { atLeast } from '../../../cells/raise/findings/quick-returns.ts';
import { raisedOf } from './judge.ts';

/** mulberry32 and a normal deviate from it. */
function chanceOf(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const YEARS = 16;
interface Plan {
  readonly unit: string;
  readonly rise?: number;
  readonly scatter?: (visit: number) => number;
  /** Visits (by number) that were followed by a callback twelve days later. */
  readonly callbacks?: readonly number[];
}

/** A yearly visit to each unit, found and left, flue 180 °C, falling 3 °C a point of O2 and rising with the air. */
function fleet(plans: readonly Plan[], seed: number) {
  const normal = chanceOf(seed);
  const rows: Record<string, string | number>[] = [];
  for (const { unit, rise = 0, scatter = () => 0.15, callbacks = [] } of plans) {
    let left = 4;
    for (let visit = 0; visit < YEARS; visit++) {
      const air = 12 + 10 * Math.abs(normal());
      const found = left + scatter(visit) * normal();
      left = 4 + 0.05 * normal();
      const day = (days: number) => new Date(Date.UTC(2010 + visit, 3, 10 + days)).toISOString().slice(0, 10);
      const add = (taken: string, state: string, o2: number, reason: string) =>
        rows.push({
          unit,
          fuel: 'natural_gas',
          taken_at: taken,
          fire: 'high',
          state,
          visit_reason: reason,
          o2_pct: Math.round(o2 * 10) / 10,
          o2_reference_pct: o2,
          flue_C: 180 + rise * visit - 3 * (o2 - 4) + 0.4 * (air - 20) + 1.5 * normal(),
          air_C: air,
        });
      add(day(0), 'as_found', found, 'scheduled');
      add(day(0), 'as_left', left, 'scheduled');
      if (callbacks.includes(visit)) add(day(12), 'as_found', left, 'callback');
    }
  }
  const pick = (names: readonly string[]) =>
    Object.fromEntries(names.map((name) => [name, rows.map((row) => row[name])]));
  const key = ['unit', 'fuel', 'taken_at', 'fire', 'state'];
  return {
    accepted: pick([...key, 'visit_reason', 'flue_C', 'air_C', 'o2_pct']),
    derived: pick([...key, 'o2_pct', 'o2_reference_pct']),
  };
}

const quiet = (count: number): Plan[] => Array.from({ length: count }, (_, i) => ({ unit: `Q-${i}` }));
const signs = async (plans: readonly Plan[], seed: number, more: object = {}): Promise<string[]> =>
  (await raisedOf({ ...fleet(plans, seed), ...more })).map(({ unit, reason }) => `${unit} ${reason}`);

describe('what is no drift of a level', () => {
  test('a quiet fleet shows nothing', async () => {
    const found = [];
    for (const seed of [1, 2, 3, 4, 5, 6]) found.push(...(await signs(quiet(40), seed)));
    // 6 x 120 tests at a false discovery rate of 5 %, all of them false: less than one fleet in twenty shows any.
    expect(found.length).toBeLessThanOrEqual(1);
  });

  test('a flue that gets 2 °C hotter a year at the same O2 is found, whatever the air did', async () => {
    expect(await signs([...quiet(30), { unit: 'F-1', rise: 2 }], 11)).toEqual(['F-1 flue_temperature_rising']);
  });

  test('cleaning begins the flue anew', async () => {
    const events = { unit: ['F-1'], on: ['2019-06-01'], event: ['cleaned'] };
    expect(await signs([...quiet(10), { unit: 'F-1', rise: 1 }], 12, { events })).toEqual([]);
  });

  test('a fire that scatters more than it used to', async () => {
    const scatter = (visit: number): number => (visit < YEARS / 2 ? 0.1 : 1.2);
    expect(await signs([...quiet(10), { unit: 'S-1', scatter }], 21)).toEqual(['S-1 scatter_growing']);
  });

  test('an analyzer that reads high scatters no fire', async () => {
    const given = fleet(quiet(12), 41);
    const late = given.accepted['taken_at'].map((day) => String(day) > '2018');
    const high = given.accepted['state'].map((state, i) => late[i] && state === 'as_found' && i % 3 === 0);
    const analyzer = high.map((isHigh) => (isHigh ? 'K-9' : 'K-1'));
    const shifted = given.derived['o2_reference_pct'].map((o2, i) => Number(o2) + (high[i] ? 1.2 : 0));
    const tables = {
      accepted: { ...given.accepted, analyzer },
      derived: { ...given.derived, o2_reference_pct: shifted },
    };
    const instruments = { analyzer: ['K-1', 'K-9'], verdict: ['within', 'biased'], o2_bias_pct: [0, 1.2] };
    const found = async (more: object): Promise<number> =>
      (await raisedOf({ ...tables, ...more })).filter(({ reason }) => reason === 'scatter_growing').length;
    expect(await found({})).toBeGreaterThan(0);
    expect(await found({ instruments })).toBe(0);
  });

  test('a unit that calls back soon after most visits, not one that did once', async () => {
    const plans = [...quiet(20), { unit: 'R-1', callbacks: [2, 4, 5, 7, 9, 11, 13] }, { unit: 'R-2', callbacks: [3] }];
    expect(await signs(plans, 31)).toEqual(['R-1 returns_quickly']);
  });

  test('a visit soon after another counts where its reason is not told; where the whole fleet is read so, nobody stands out', async () => {
    const untold = (given: ReturnType<typeof fleet>) => ({
      ...given,
      accepted: { ...given.accepted, visit_reason: given.accepted['visit_reason'].map(() => '') },
    });
    const often = [2, 4, 5, 7, 9, 11, 13];
    const returns = async (plans: readonly Plan[]): Promise<string[]> =>
      (await raisedOf(untold(fleet(plans, 31)))).flatMap(({ unit, reason }) =>
        reason === 'returns_quickly' ? [unit] : [],
      );
    expect(await returns([...quiet(20), { unit: 'R-1', callbacks: often }])).toEqual(['R-1']);
    expect(await returns(quiet(20).map((plan) => ({ ...plan, callbacks: often })))).toEqual([]);
  });

  test('eight visits are enough to see a fire scatter, by what is common in the fleet; one bad reading is none', async () => {
    const eight = (scatter: (visit: number) => number): Plan => ({ unit: 'S-1', scatter });
    const short = (plans: readonly Plan[], seed: number) => {
      const { accepted, derived } = fleet(plans, seed);
      const keep = accepted['taken_at'].map((day) => String(day) < '2018');
      const cut = (table: Record<string, (string | number)[]>) =>
        Object.fromEntries(Object.entries(table).map(([name, values]) => [name, values.filter((_, i) => keep[i])]));
      return { accepted: cut(accepted), derived: cut(derived) };
    };
    const scattering = async (plan: Plan, seed: number): Promise<string[]> =>
      (await raisedOf(short([...quiet(30), plan], seed))).flatMap(({ unit, reason }) =>
        reason === 'scatter_growing' ? [unit] : [],
      );
    const worn = eight((visit) => (visit < 5 ? 0.15 : 1));
    const found = [];
    for (const seed of [51, 52, 53, 54]) found.push(...(await scattering(worn, seed)));
    expect(found.length).toBeGreaterThanOrEqual(3);
    expect(
      await scattering(
        eight((visit) => (visit === 6 ? 2.5 : 0.15)),
        55,
      ),
    ).toEqual([]);
  });

  test('they cost, so they stand in the tier below tolerance, with the rate at which such lists err', async () => {
    const [row] = await raisedOf(fleet([...quiet(10), { unit: 'F-1', rise: 2 }], 11));
    expect(row).toMatchObject({ unit: 'F-1', tier: 'cost' });
    expect(row.falseDiscoveryRate).toBeLessThanOrEqual(0.05);
    expect(row.checkFirst).toMatch(/^Fireside first/);
  });
});

test('binomial tail: 3 or more of 10 at one half is 1 - (1 + 10 + 45)/1024', () => {
  expect(atLeast(3, 10, 0.5)).toBeCloseTo(1 - 56 / 1024, 12);
  expect(atLeast(0, 10, 0.05)).toBe(1);
  expect(atLeast(2, 2, 0.05)).toBeCloseTo(0.0025, 12);
});
