import { expect, test } from 'vitest';
import { fleetMonths } from '../../../cells/raise/findings/fleet-months.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { makeTable, type Table } from '../../../shared/table/table.ts';

/** Twelve units read on one day of each of twelve months at 4 % O2, give or take a little; `shift` moves one month. */
function fleet(units: number, shift: number): Table {
  const rows = Array.from({ length: units * 12 }, (_, i) => ({ unit: `U-${i % units}`, month: Math.floor(i / units) }));
  const day = Float64Array.from(rows, ({ month }) => 19_723 + month * 30.5 + 3);
  const text = (of: (row: (typeof rows)[number]) => string) => textColumn(rows.map(of));
  // A small wobble of known size that is the same for every month.
  const wobble = rows.map((_, i) => 0.1 * Math.sin(i * 7.3));
  const key = [
    ['unit', text(({ unit }) => unit)],
    ['fuel', text(() => 'natural_gas')],
    ['fire', text(() => 'high')],
    ['day', { kind: 'date' as const, values: day }],
  ] as const;
  return makeTable([
    ...key,
    ['quantity', text(() => 'o2_pct')],
    [
      'value',
      numberColumn(
        '%',
        Float64Array.from(rows, ({ month }, i) => 4 + wobble[i] + (month === 5 ? shift : 0)),
      ),
    ],
    ['state', text(() => 'as_found')],
    ['used', text(() => 'yes')],
    [
      'level',
      numberColumn(
        '%',
        Float64Array.from(rows, () => 4),
      ),
    ],
  ]);
}

test('a month in which every unit reads lean is the fleet’s, not the units’', () => {
  const points = fleet(12, 0.4);
  const [month, ...others] = fleetMonths(points, () => 3);
  expect(others).toEqual([]);
  expect(month).toMatchObject({ month: '2024-06', units: 12 });
  expect(month.leanerO2).toBeCloseTo(0.4, 1);
});

test('nothing is called for a quiet year, a handful of units, or one analyzer alone', () => {
  const quiet = fleet(12, 0);
  expect(fleetMonths(quiet, () => 3)).toEqual([]);
  const few = fleet(4, 0.4);
  expect(fleetMonths(few, () => 3)).toEqual([]);
  const many = fleet(12, 0.4);
  expect(fleetMonths(many, () => 1)).toEqual([]);
});
