import { describe, expect, test } from 'vitest';
import { compute } from '../../../cells/savings/compute.ts';
import { readParameters } from '../../../cells/savings/parameters.ts';
import { exampleContext, exampleInputs, exampleOf } from '../read-example.ts';
import { at, type Row, said, savingsOf } from './savings-of.ts';

describe('weights', () => {
  const twoFires: readonly Row[] = [
    { fire: 'high', state: 'as_found', efficiency_gross_pct: 80.9 },
    { fire: 'high', state: 'as_left', efficiency_gross_pct: 82.0 },
    { fire: 'low', state: 'as_found', efficiency_gross_pct: 83.1 },
    { fire: 'low', state: 'as_left', efficiency_gross_pct: 84.4 },
  ];

  test('low 83.1 to 84.4, high 80.9 to 82.0, 65 % of fuel at low fire: 1.47 % (computed for the trade)', async () => {
    const table = await savingsOf(twoFires, {
      economics: [{ unit: 'U-1', fuel: 'natural_gas', low_fire_share: 0.65 }],
    });
    expect(at(table, 'fuel_saved_pct')).toBeCloseTo(1.47, 2);
  });

  test('84 to 84.2 and 76 to 81 half and half: 3.2 %, arithmetic over fuel shares, not 3.4 (trade knowledge)', async () => {
    const rows = [84, 84.2, 76, 81].map((efficiency, i) => ({ ...twoFires[i], efficiency_gross_pct: efficiency }));
    const table = await savingsOf(rows, { economics: [{ unit: 'U-1', fuel: 'natural_gas', low_fire_share: 0.5 }] });
    expect(at(table, 'fuel_saved_pct')).toBeCloseTo(3.2, 1);
  });

  test('an unknown share: one half in the middle, none to all as the interval', async () => {
    const unknown = await savingsOf(twoFires);
    const shares = await Promise.all(
      [0, 0.5, 1].map((share) =>
        savingsOf(twoFires, { economics: [{ unit: 'U-1', fuel: 'natural_gas', low_fire_share: share }] }),
      ),
    );
    const [none, half, all] = shares;
    expect(at(unknown, 'fuel_saved_pct')).toBeCloseTo(at(half, 'fuel_saved_pct'), 12);
    const ends = [none, all];
    expect(at(unknown, 'fuel_saved_pct_lower')).toBeCloseTo(
      Math.min(...ends.map((t) => at(t, 'fuel_saved_pct_lower'))),
      12,
    );
    expect(at(unknown, 'fuel_saved_pct_upper')).toBeCloseTo(
      Math.max(...ends.map((t) => at(t, 'fuel_saved_pct_upper'))),
      12,
    );
  });
});

describe('season is taken out of found and left alike', () => {
  // Read at -12 °C: found 6.0, left 4.0 % O2 are 3.9 and 1.6 at reference air (computed for the trade).
  const winter: readonly Row[] = [
    { state: 'as_found', o2_pct: 6, o2_reference_pct: 3.9, air_C: -12, efficiency_gross_pct: 80.6 },
    { state: 'as_left', o2_pct: 4, o2_reference_pct: 1.6, air_C: -12, efficiency_gross_pct: 81.5 },
  ];

  test('a saving stays a saving', async () => {
    const [reference, measured] = [await savingsOf(winter), await savingsOf(winter, {}, { air: 'measured' })];
    expect(at(measured, 'fuel_saved_pct')).toBeCloseTo(100 * (1 - 80.6 / 81.5), 9);
    expect(at(reference, 'fuel_saved_pct')).toBeGreaterThan(0.6);
    expect(at(reference, 'efficiency_found_pct')).toBeGreaterThan(80.6);
  });

  test('without O2 the efficiencies stand as they were derived, and nothing is told from nothing', async () => {
    const table = await savingsOf(winter.map((row) => ({ ...row, o2_pct: null, o2_reference_pct: null })));
    expect(at(table, 'fuel_saved_pct')).toBeCloseTo(100 * (1 - 80.6 / 81.5), 9);
    expect(at(table, 'fuel_saved_pct_lower')).toBeNaN();
    expect(said(table, 'distinguishable')).toBe('unknown');
  });
});

describe('the interval', () => {
  test('same analyzer, same day: the difference of two efficiencies is good to 0.05 to 0.1 points (trade knowledge)', async () => {
    const table = await savingsOf(
      [{ state: 'as_found' }, { state: 'as_left', o2_pct: 4.8, o2_reference_pct: 4.8 }],
      {},
      { air: 'measured' },
    );
    const sdPoints = ((at(table, 'fuel_saved_pct_upper') - at(table, 'fuel_saved_pct_lower')) / 2 / 1.645) * 0.82;
    expect(sdPoints).toBeGreaterThan(0.05);
    expect(sdPoints).toBeLessThan(0.1);
    expect(said(table, 'distinguishable')).toBe('no');
  });

  test('two analyzers: 0.15 to 0.25 points (trade knowledge)', async () => {
    const table = await savingsOf(
      [{ state: 'as_found' }, { state: 'as_left', analyzer: 'K-2' }],
      {},
      { air: 'measured' },
    );
    const sdPoints = ((at(table, 'fuel_saved_pct_upper') - at(table, 'fuel_saved_pct_lower')) / 2 / 1.645) * 0.82;
    expect(sdPoints).toBeGreaterThan(0.13);
    expect(sdPoints).toBeLessThan(0.25);
  });

  test('a hotter flue at the same O2 saved nothing by O2: a cold start is seen for what it is', async () => {
    const table = await savingsOf([
      { state: 'as_found', flue_C: 150, efficiency_gross_pct: 83.5 },
      { state: 'as_left', flue_C: 180, efficiency_gross_pct: 82 },
    ]);
    expect(at(table, 'fuel_saved_pct')).toBeLessThan(-1);
    expect(at(table, 'fuel_saved_pct_same_flue')).toBeCloseTo(0, 9);
  });
});

describe('which visit', () => {
  const pair = (day: string, found: number, left: number, more: Row = {}): Row[] => [
    { ...more, taken_at: day, state: 'as_found', efficiency_gross_pct: found },
    { ...more, taken_at: day, state: 'as_left', efficiency_gross_pct: left },
  ];

  test('the last with both states, one row a unit and fuel', async () => {
    const table = await savingsOf([
      ...pair('2023-02-01', 70, 80),
      ...pair('2024-02-01', 81, 82),
      { taken_at: '2025-02-01', state: 'as_found', efficiency_gross_pct: 60 },
      ...pair('2024-06-01', 80, 81, { fuel: 'no2_oil' }),
    ]);
    expect(table.rows).toBe(2);
    expect([said(table, 'fuel', 0), said(table, 'fuel', 1)]).toEqual(['natural_gas', 'no2_oil']);
    expect(at(table, 'left_on')).toBe(Date.UTC(2024, 1, 1) / 86_400_000);
    expect(at(table, 'fuel_saved_pct')).toBeCloseTo(100 * (1 - 81 / 82), 9);
  });

  test('no pair, no row', async () => {
    expect((await savingsOf([{ state: 'as_found' }, { state: 'unknown' }])).rows).toBe(0);
  });
});

describe('fuel use', () => {
  const rows: Row[] = [
    { state: 'as_found', efficiency_gross_pct: 80 },
    { state: 'as_left', efficiency_gross_pct: 82 },
  ];
  const year = (from: string, to: string, energy: number, cost: number | null): Row => ({
    unit: 'U-1',
    fuel: 'natural_gas',
    from,
    to,
    energy_kWh: energy,
    cost,
  });

  test('metered comes before the register, and a year of it is needed', async () => {
    const economics = [{ unit: 'U-1', fuel: 'natural_gas', annual_fuel_kWh: 50_000, fuel_price_per_kWh: 0.1 }];
    const whole = await savingsOf(rows, { economics, use: [year('2025-03-01', '2026-02-28', 100_000, 6_000)] });
    expect(said(whole, 'fuel_use_source')).toBe('metered');
    expect(at(whole, 'cost_saved')).toBeCloseTo(((2 / 82) * 6_000 * 365.25) / 365, 6);
    const part = await savingsOf(rows, { economics, use: [year('2025-12-01', '2026-02-28', 60_000, 4_000)] });
    expect(said(part, 'fuel_use_source')).toBe('register');
    expect(at(part, 'cost_saved')).toBeCloseTo((2 / 82) * 50_000 * 0.1, 9);
  });

  test('none known: the saving stands, its cost is unknown, not zero', async () => {
    const table = await savingsOf(rows);
    expect(at(table, 'fuel_saved_pct')).toBeCloseTo(100 * (2 / 82), 9);
    for (const column of ['cost_saved', 'cost_saved_lower', 'cost_saved_upper', 'co2e_saved_kg'])
      expect(at(table, column)).toBeNaN();
    expect(said(table, 'fuel_use_source')).toBe('');
  });

  test('against the next planned visit only the time until then counts', async () => {
    const tables = {
      economics: [{ unit: 'U-1', fuel: 'natural_gas', annual_fuel_kWh: 50_000, fuel_price_per_kWh: 0.1 }],
      planning: [{ unit: 'U-1', next_visit_on: '2026-05-03' }],
    };
    const whole = await savingsOf(rows, tables);
    const part = await savingsOf(rows, tables, { counterfactual: 'next_planned_visit' });
    expect(at(part, 'cost_saved') / at(whole, 'cost_saved')).toBeCloseTo(91 / 365.25, 9);
    expect(said(part, 'counterfactual')).toContain('2026-05-03');
  });
});

test('a burner that was not adjusted was saved nothing by the visit, whatever the analyzer showed', async () => {
  const rows = [
    { state: 'as_found', adjusted: 'no', efficiency_gross_pct: 80 },
    { state: 'as_left', adjusted: 'no', efficiency_gross_pct: 82 },
  ];
  expect(said(await savingsOf(rows), 'distinguishable')).toBe('no');
});

test('how long it lasts: found 2.6 points above left, drifting up 0.8 a year', async () => {
  const rows = [
    { state: 'as_found', o2_reference_pct: 6.3, o2_pct: 6.3 },
    { state: 'as_left', o2_reference_pct: 3.7, o2_pct: 3.7 },
  ];
  const drift = (slope: number) => [
    { unit: 'U-1', fuel: 'natural_gas', fire: 'high', quantity: 'o2_pct', slope_per_year: slope },
  ];
  expect(at(await savingsOf(rows, { drift: drift(0.8) }), 'persistence_years')).toBeCloseTo(3.25, 9);
  expect(at(await savingsOf(rows, { drift: drift(-0.2) }), 'persistence_years')).toBe(5);
  expect(at(await savingsOf(rows), 'persistence_years')).toBeNaN();
});

test('the answer of the example', async () => {
  const example = exampleOf('savings');
  const read = readParameters(example.parameters);
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const result = await compute(read.value, exampleInputs(example), await exampleContext(example));
  expect(result.status === 'value' && result.value.answer).toMatch(
    /^Of the last visits to 1 unit and fuel, 1 saved or cost fuel that can be told from nothing; where .* the savings add up to \d+ a year/,
  );
});
