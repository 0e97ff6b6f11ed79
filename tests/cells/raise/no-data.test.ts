import { describe, expect, test } from 'vitest';
import { raisedOf, reasonsOf } from './judge.ts';

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
    expect(await reasonsOf({ units: units(), accepted: last('2025-02-01') })).toEqual([]);
    expect(await reasonsOf({ units: units(), accepted: last('2024-10-01') })).toEqual(['E-1 no_data']);
    const planning = { unit: ['E-1'], max_interval_months: [24] };
    expect(await reasonsOf({ units: units(), planning, accepted: last('2024-10-01') })).toEqual([]);
  });

  test('a unit never read is raised, one just installed or out of use is not', async () => {
    expect(await reasonsOf({ units: units() })).toEqual(['E-1 no_data']);
    expect(await reasonsOf({ units: units({ installed_on: '2026-03-01' }) })).toEqual([]);
    expect(await reasonsOf({ units: units({ retired_on: '2026-03-01' }) })).toEqual([]);
    const events = { unit: ['E-1'], on: ['2024-12-01'], event: ['laid_up'] };
    expect(await reasonsOf({ units: units(), accepted: last('2024-10-01'), events })).toEqual([]);
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
