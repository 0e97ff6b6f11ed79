import { expect, test } from 'vitest';
import { lanesOf } from '../../../shared/lanes/lanes-of.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { type Column, makeTable, type Table } from '../../../shared/table/table.ts';

const texts = (...values: string[]): Column => textColumn(values);
const numbers = (...values: number[]): Column => numberColumn('1', Float64Array.from(values));
const dates = (...values: number[]): Column => ({ kind: 'date', values: Float64Array.from(values) });

const drift: Table = makeTable([
  ['unit', texts('A', 'A', 'B')],
  ['fuel', texts('natural_gas', 'natural_gas', 'propane')],
  ['fire', texts('low', 'high', 'single')],
  ['quantity', texts('co2_pct', 'co2_pct', 'o2_pct')],
  ['lower_limit', numbers(8.2, 8.5, 3)],
  ['upper_limit', numbers(8.8, 9.1, 5)],
  ['horizon_on', dates(20_500, 20_500, 20_500)],
  ['leaves_on_50', dates(Number.NaN, 20_300, Number.NaN)],
]);
const points: Table = makeTable([
  ['unit', texts('A', 'A', 'A', 'B')],
  ['fuel', texts('natural_gas', 'natural_gas', 'natural_gas', 'propane')],
  ['fire', texts('high', 'high', 'low', 'single')],
  ['day', dates(19_000, 19_400, 19_000, 19_100)],
  ['quantity', texts('co2_pct', 'o2_pct', 'co2_pct', 'o2_pct')],
  ['value', numbers(8.9, 4.5, 8.5, 4)],
  ['as_measured', numbers(8.7, 4.6, 8.4, 4.2)],
  ['state', texts('as_found', 'as_found', 'as_left', 'as_found')],
]);
const path: Table = makeTable([
  ['unit', texts('A', 'A')],
  ['fuel', texts('natural_gas', 'natural_gas')],
  ['fire', texts('high', 'high')],
  ['day', dates(19_000, 20_500)],
  ['level', numbers(8.9, 8.4)],
  ['lower', numbers(8.8, 8.1)],
  ['upper', numbers(9, 8.7)],
]);
const supply: Table = makeTable([
  ['unit', texts('A')],
  ['drop_limit_Pa', numbers(249)],
]);
const supplyPoints: Table = makeTable([
  ['unit', texts('A', 'A')],
  ['day', dates(19_000, 19_400)],
  ['drop_Pa', numbers(140, Number.NaN)],
]);
const units: Table = makeTable([
  ['unit', texts('A')],
  ['site', texts('North')],
  ['building', texts('Laundry')],
]);

test('one lane a fire, high above low, in the quantity that is judged, with place and supply', () => {
  const [a] = lanesOf({ drift, points, path, supply, supplyPoints, units }, ['A'], 20_135);
  expect(a.place).toBe('Laundry, North');
  expect(a.lanes.map(({ fire }) => fire)).toEqual(['high', 'low']);
  expect(a.lanes[0].readings).toEqual([{ day: 19_000, value: 8.9, asMeasured: 8.7, state: 'as_found' }]);
  expect(a.lanes[0].path.map(({ day }) => day)).toEqual([19_000, 20_500]);
  expect(a.lanes[0]).toMatchObject({ lower: 8.5, upper: 9.1, leavesOn: 20_300, horizon: 20_500, asOf: 20_135 });
  expect(a.supply).toEqual({ limitPa: 249, readings: [{ day: 19_000, dropPa: 140 }], path: [] });
});

test('the path runs on, straight as it ends, to a day of leaving beyond it', () => {
  const later = makeTable([...drift.columns, ['leaves_on_50', dates(Number.NaN, 21_250, Number.NaN)]]);
  const [a] = lanesOf({ drift: later, points, path }, ['A'], 20_135);
  // 0.5 points in 1500 days before, so a quarter in the 750 days beyond.
  expect(a.lanes[0].path.at(-1)).toMatchObject({ day: 21_250 });
  expect(a.lanes[0].path.at(-1)?.level).toBeCloseTo(8.15, 9);
});

test('units come in the order asked for; an unknown one has no lanes', () => {
  const lanes = lanesOf({ drift, points, path }, ['Z', 'B', 'A'], 20_135);
  expect(lanes.map(({ unit }) => unit)).toEqual(['Z', 'B', 'A']);
  expect(lanes[0].lanes).toEqual([]);
  expect(lanes[1].lanes[0].quantity).toBe('o2_pct');
});
