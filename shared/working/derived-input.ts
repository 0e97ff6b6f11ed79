import { RELATIONS } from '../combustion/relations/relations.ts';
import { shownDoubt, shownNumber } from '../formula/shown-number.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { boundsOf, numbersOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import type { WorkedNumber } from './worked-number.ts';

const BY_NAME = new Map(RELATIONS.map((relation) => [relation.name, relation]));

/** A number of the derived table as what a further relation begins with; `cell` is the cell that derived it. */
export function derivedInput(derived: Table, column: string, row: number, cell: string): WorkedNumber {
  const { title = column, symbol = column, unit: code = '' } = BY_NAME.get(column) ?? {};
  const unit = findUnit(code)?.shown ?? code;
  const value = numbersOf(derived, column)[row];
  const sd = numbersOf(derived, `${column}_sd`)[row];
  const bound = boundsOf(derived, column)[row];
  return {
    input: {
      name: `${cell}.${column}.${row}`,
      title,
      symbol,
      shown: shownNumber(value, unit, bound),
      ...shownDoubt(value, sd, unit, bound),
      from: { cell, column, row },
    },
    ...{ value, sd, bound, unit },
  };
}
