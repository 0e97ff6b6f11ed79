import { expect, test } from 'vitest';
import { judge, readRaised } from './judge.ts';

/** Named in the parameters and not among the inputs: cells that fail, ask or wait. */
const failing = { events: 'events', derive: 'derive', drift: 'drift', supply: 'supply', instruments: 'instruments' };
const accepted = {
  unit: ['A', 'B'],
  taken_at: ['2026-03-01', '2026-03-01'],
  fire: ['high', 'high'],
  state: ['as_left', 'as_left'],
  fuel: ['natural_gas', 'natural_gas'],
  // Air-free by 20.9 / (20.9 - O2): A 250 at 10.45 % O2 is 500, B 50 at 5 % is 66.
  co_ppm: [250, 50],
  o2_pct: [10.45, 5],
};

test('a measured high CO is raised while every fit fails, by its air-free value from the reading', async () => {
  const result = await judge({ accepted }, failing);
  const raised = readRaised(result).filter(({ reason }) => reason === 'co_high');
  expect(raised.map(({ unit }) => unit)).toEqual(['A']);
  expect(raised[0].evidence).toContain('500');
});

test('what was left out is said, cell by cell, after the caution and before everything else', async () => {
  const { remarks } = await judge({ accepted }, failing);
  const texts = remarks.map(({ text }) => text);
  for (const cell of Object.values(failing))
    expect(texts.filter((text) => text.startsWith(`Cell ${cell} has no result at present`))).toHaveLength(1);
  expect(remarks.slice(0, 6).map(({ severity }) => severity)).toEqual(['danger', ...Array(5).fill('warning')]);
});

test('cells that the notebook does not have are not missed', async () => {
  const { remarks } = await judge({ accepted });
  expect(remarks.filter(({ text }) => text.includes('no result at present'))).toEqual([]);
});

const pressures = (running: number) => ({
  accepted: {
    unit: ['A', 'A'],
    taken_at: ['2025-03-01', '2026-03-01'],
    fire: ['high', 'high'],
    state: ['as_left', 'as_left'],
    supply_static_Pa: [2000, 2000],
    supply_running_Pa: [1900, running],
  },
  'supply-limits': { unit: ['A'], supply_min_Pa: [1245], supply_max_Pa: [3487], drop_limit_Pa: [500] },
});

test('a supply that read under its minimum or dropped over its limit is raised while every fit fails', async () => {
  const reasons = async (running: number) =>
    readRaised(await judge(pressures(running), failing)).map(({ reason }) => reason);
  expect(await reasons(1200)).toEqual(['supply_under_minimum', 'supply_drop_over']);
  expect(await reasons(1400)).toEqual(['supply_drop_over']);
  expect(await reasons(1501)).toEqual([]);
});
