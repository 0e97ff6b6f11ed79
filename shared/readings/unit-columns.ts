import { findUnit } from '../quantities/find-unit.ts';
import type { TableFound } from './find-table.ts';
import type { ColumnMapping } from './mapping.ts';
import { plainWords } from './plain-words.ts';
import { unused } from './unused-column.ts';
import type { Vocabulary } from './vocabulary.ts';

const UNIT_HEAD = /^(?:units?|uom|einheit|unite|unidad|unita|eenheid)$/i;
const NUMBER = /^[<>]?\s*[-+]?\d[\d.,\s]*$/;

/**
 * A column of units beside each number: it is no unit of a building, and says what the number left of it is in. A table
 * of fuel use has a column for it where another one names the building's unit.
 */
export function withUnitColumns(
  columns: readonly ColumnMapping[],
  { rows }: Pick<TableFound, 'rows'>,
  { fields }: Vocabulary,
): ColumnMapping[] {
  const cellsOf = (index: number): readonly string[] =>
    rows.map((row) => (row[index] ?? '').trim()).filter((cell) => cell !== '');
  const unitsIn = (index: number): readonly string[] | undefined => {
    const cells = cellsOf(index);
    const codes = cells.map((cell) => findUnit(cell)?.code ?? '');
    return cells.length > 0 && codes.every((code) => code !== '') ? [...new Set(codes)] : undefined;
  };
  // Boilers may be called A, C and F; only beside a number are these units.
  const isNumber = ({ field, index }: ColumnMapping): boolean => {
    const kind = fields.get(field)?.kind;
    return kind === 'number' || (kind === undefined && cellsOf(index).every((cell) => NUMBER.test(cell)));
  };
  const settled = columns.map((column, i) =>
    isOfQuantity(column, columns[i - 1], columns, fields)
      ? { ...column, field: 'quantity_unit', reason: 'it stands beside the quantity' }
      : column,
  );
  const units = new Map(
    settled.flatMap(({ index, head, field }) => {
      const before = settled[index - 1];
      const isBeside = field !== 'quantity_unit' && before !== undefined && UNIT_HEAD.test(plainWords(head));
      const found = isBeside && isNumber(before) ? unitsIn(index) : undefined;
      return found ? [[index, found] as const] : [];
    }),
  );
  if (units.size === 0) return settled;
  return settled.map((column) => {
    if (units.has(column.index)) return unused(column, 'units of the column before it');
    const beside = units.get(column.index + 1);
    if (!beside || column.field === '' || column.unit !== '') return column;
    if (beside.length > 1) return unused(column, 'its units differ from row to row');
    return { ...column, unit: beside[0], reason: `${column.reason}; unit in the column beside it` };
  });
}

/** "Unit" right of a quantity, where another column is the unit of a building. */
function isOfQuantity(
  { field, head, confidence, reason }: ColumnMapping,
  before: ColumnMapping | undefined,
  columns: readonly ColumnMapping[],
  fields: Vocabulary['fields'],
): boolean {
  if (field !== 'unit' || before?.field !== 'quantity' || !fields.has('quantity_unit')) return false;
  const isGiven = confidence === 1 && reason.startsWith('profile');
  return !isGiven && UNIT_HEAD.test(plainWords(head)) && columns.filter((other) => other.field === 'unit').length > 1;
}
