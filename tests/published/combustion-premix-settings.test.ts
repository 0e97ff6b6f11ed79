/**
 * Common practice, no source: a condensing premix unit on natural gas is set to about 8.8 % CO2 (plus or minus 0.2) at high
 * fire and about 8.5 % at low. The O2 beside it, about 5.4 and 5.9 %, is what instruments show with such settings.
 */
import { expect, test } from 'vitest';
import { relationsAt } from '../shared/combustion/relations-at.ts';

test.each([
  [8.8, 5.4],
  [8.5, 5.9],
])('%s %% CO2 stands beside %s %% O2', (co2, o2) => {
  const at = relationsAt('natural_gas', { inputs: { 'reading.co2_pct': co2 } });
  expect(Math.abs(at('o2_pct').value - o2)).toBeLessThan(0.15);
});

test.each([
  // Natural gas, expected CO2 by O2 in points, as tables of the trade round it.
  [2, 10.8],
  [3, 10.2],
  [4, 9.6],
  [5, 9.0],
  [6, 8.5],
  [7, 7.9],
  [8, 7.3],
  [9, 6.8],
])('%s %% O2 stands beside %s %% CO2', (o2, co2) => {
  const at = relationsAt('natural_gas', { inputs: { 'reading.o2_pct': o2 } });
  expect(Math.abs(at('co2_pct').value - co2)).toBeLessThan(0.1);
});
