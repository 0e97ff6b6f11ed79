import * as say from '../messages/import.ts';
import type { CellFault, SmallRow } from './read-table.ts';

/** A number of a row that cannot be negative; one that is counts as unknown and is told. */
export function atLeastZero(row: SmallRow, field: string, faults: CellFault[]): number {
  const value = row.number(field);
  if (!(value < 0)) return value;
  faults.push({ file: row.file, line: row.line, reason: say.outOfBounds(field, shownNumber(value), 'less than 0') });
  return Number.NaN;
}

/** A lower and an upper limit of a row; where they are crossed neither is known, and that is told. */
export function inOrder(
  row: SmallRow,
  [lower, upper]: readonly [string, string],
  faults: CellFault[],
): readonly [lower: number, upper: number] {
  const [low, high] = [row.number(lower), row.number(upper)];
  if (!(low > high)) return [low, high];
  const reason = say.crossedLimits(lower, shownNumber(low), upper, shownNumber(high));
  faults.push({ file: row.file, line: row.line, reason });
  return [Number.NaN, Number.NaN];
}

const shownNumber = (value: number): string => String(Number(value.toPrecision(6)));
