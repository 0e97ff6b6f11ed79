import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { ANALYZER_CLASSES, type Measured, type Spread } from './analyzer-classes.ts';

/** Standard uncertainty of a value that an analyzer showed, by the table beside derived readings, else by the usual class. */
export function knownSpreads(
  table: Table | undefined,
): (analyzer: string, quantity: Measured, value: number) => number {
  const known = new Map<string, Spread>();
  if (table) {
    const [analyzer, quantity] = ['analyzer', 'quantity'].map((name) => textsOf(table, name));
    const [absolute, relative] = ['absolute', 'relative'].map((name) => numbersOf(table, name));
    for (let row = 0; row < table.rows; row++)
      known.set(`${textAt(analyzer, row)}\u0000${textAt(quantity, row)}`, {
        absolute: absolute[row],
        relative: relative[row],
      });
  }
  return (analyzer, quantity, value) => {
    const { absolute, relative } =
      known.get(`${analyzer}\u0000${quantity}`) ??
      known.get(`\u0000${quantity}`) ??
      ANALYZER_CLASSES['service'][quantity];
    return Math.max(absolute, relative * Math.abs(value));
  };
}
