import { describe, expect, test } from 'vitest';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { makeTable, type Table } from '../../../shared/table/table.ts';
import { filterRows, groupRows, orderRows, rollUp } from '../../../shared/table/verbs.ts';

const { NaN: unknown } = Number;
const table = (units: string[], values: number[]): Table =>
  makeTable([
    ['unit', textColumn(units)],
    ['o2', numberColumn('%', Float64Array.from(values))],
  ]);
const boilers = table(['b', 'a', 'b', '', 'a'], [3, 5, unknown, 4, 4]);

describe('orderRows', () => {
  test('orders text by code unit and puts unknowns last', () => {
    expect([...orderRows(boilers, [{ column: 'unit' }])]).toEqual([1, 4, 0, 2, 3]);
    expect([...orderRows(boilers, [{ column: 'o2', descending: true }])]).toEqual([1, 3, 4, 0, 2]);
  });
  test('upper case before lower case, ties keep their order', () => {
    const mixed = table(['b', 'B', 'b', 'B'], [1, 1, 1, 1]);
    expect([...orderRows(mixed, [{ column: 'unit' }])]).toEqual([1, 3, 0, 2]);
    expect([...orderRows(mixed, [{ column: 'o2' }])]).toEqual([0, 1, 2, 3]);
  });
});

test('groupRows numbers groups by first appearance; unknown agrees with unknown', () => {
  const { of, count, firstRow } = groupRows(boilers, ['unit']);
  expect([...of]).toEqual([0, 1, 0, 2, 1]);
  expect(count).toBe(3);
  expect([...firstRow]).toEqual([0, 1, 3]);
});

test('filterRows keeps row numbers', () => {
  expect([...filterRows(boilers, (row) => row % 2 === 0)]).toEqual([0, 2, 4]);
});

test('rollUp skips unknowns and says unknown where nothing is known', () => {
  const [mean, count] = rollUp(
    boilers,
    ['unit'],
    [
      { column: 'o2', by: 'mean' },
      { column: 'o2', by: 'count' },
    ],
  );
  expect([...mean]).toEqual([3, 4.5, 4]);
  expect([...count]).toEqual([1, 2, 1]);
  const [lone] = rollUp(table(['a'], [unknown]), ['unit'], [{ column: 'o2', by: 'mean' }]);
  expect([...lone]).toEqual([unknown]);
});

test('an empty table has no rows and no groups', () => {
  const none = table([], []);
  expect(orderRows(none, [{ column: 'unit' }])).toHaveLength(0);
  expect(groupRows(none, ['unit']).count).toBe(0);
});
