import { expect, test } from 'vitest';
import { byTier, raisedUnits } from '../../../cells/raise/raised-units.ts';
import { raisedSchema } from '../../../shared/schemas/raised.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { tableOf } from '../../../shared/table/schema.ts';
import type { Column } from '../../../shared/table/table.ts';

const table = tableOf(
  raisedSchema,
  4,
  new Map<string, Column>([
    ['rank', numberColumn('1', Float64Array.of(3, 1, 2, 4))],
    ['unit', textColumn(['B', 'A', 'B', 'C'])],
    ['tier', textColumn(['tolerance', 'safety', 'supply', 'tolerance'])],
    ['reason', textColumn(['leaving_tolerance', 'co_high', 'supply_drop_growing', 'out_of_tolerance'])],
  ]),
);

test('a unit is one tag with all its findings, worst first; units stand in order of their best rank', () => {
  const units = raisedUnits(table, table.rows);
  expect(units.map(({ unit, tier }) => [unit, tier])).toEqual([
    ['A', 'safety'],
    ['B', 'supply'],
    ['C', 'tolerance'],
  ]);
  expect(units[1].findings.map(({ rank, reason }) => [rank, reason])).toEqual([
    [2, 'supply_drop_growing'],
    [3, 'leaving_tolerance'],
  ]);
  expect(units[0].findings[0].probability).toBeNaN();
});

test('units stand under the tier of their worst finding, safety before all', () => {
  expect(byTier(raisedUnits(table, table.rows)).map(([tier, units]) => [tier, units.length])).toEqual([
    ['safety', 1],
    ['supply', 1],
    ['tolerance', 1],
  ]);
});
