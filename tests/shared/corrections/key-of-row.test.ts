import { expect, test } from 'vitest';
import { keyOfRow } from '../../../shared/corrections/key-of-row.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { textColumn } from '../../../shared/table/columns.ts';
import { tableOf } from '../../../shared/table/schema.ts';
import type { Column } from '../../../shared/table/table.ts';

const ROWS = [
  ['B-07', '2024-03-01', 'high', 'as_found', 'natural_gas'],
  ['b 07', '2024-03-01', 'high', 'as_found', 'natural_gas'],
  ['B-07', '2024-03-01', 'high', 'as_found', ''],
  ['B-07', '2024-03-01T09:40', 'high', 'as_found', 'natural_gas'],
  ['B-08', '2024-03-01', 'high', 'as_found', 'natural_gas'],
  ['B-07', '2024-03-01', 'high', 'as_found', ''],
] as const;

const imported = tableOf(
  readingsSchema,
  ROWS.length,
  new Map<string, Column>([
    ['unit', textColumn(ROWS.map(([unit]) => unit))],
    ['taken_at', { kind: 'date', values: Float64Array.from(ROWS, ([, taken]) => readIsoDate(taken)) }],
    ['fire', textColumn(ROWS.map(([, , fire]) => fire))],
    ['state', textColumn(ROWS.map(([, , , state]) => state))],
    ['fuel', textColumn(ROWS.map(([, , , , fuel]) => fuel))],
  ]),
);

test('a row is named by what it is, and numbered among those that agree in it; case and dashes of a unit do not tell apart', () => {
  expect(ROWS.map((_, row) => keyOfRow(imported, row))).toEqual(
    ROWS.map(([unit, taken_at, fire, state, fuel], row) => ({
      unit,
      taken_at,
      fire,
      state,
      fuel,
      nth: [1, 2, 1, 1, 1, 2][row],
    })),
  );
});
