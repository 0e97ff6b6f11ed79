/** Sentences of the chart cell; columns come by their titles. */
import { count, listOf } from './words.ts';

export const badText = (parameter: string, found: string): string =>
  `chart: ${parameter} must be text, it is ${found}; give a name, or nothing.`;
export const noTable = (cell: string, table: string, found: string): string =>
  `chart: cell ${cell} has no table ${table === '' ? 'of that name' : table}; it has ${found === '' ? 'none' : found}.`;
export const noColumn = (axis: string, column: string, table: string, nearest: string, known: string): string =>
  `chart: ${axis} names the column ${column === '' ? '(none)' : column}, which table ${table} lacks${nearest === '' ? `; it has ${known}` : `: did you mean ${nearest}?`}`;

export const axisTitle = (column: string, unit: string): string => (unit === '' ? column : `${column} (${unit})`);
export const chartTitle = (x: string, y: string): string => `${y} against ${x}`;
export const chartAlternative = (x: string, y: string, color: string, drawn: number, table: string): string =>
  `${y} against ${x} for ${count(drawn, 'row', 'rows')} of ${table}${color === '' ? '' : `, told apart by ${color} in color and shape`}.`;
export const chartAnswer = (x: string, y: string, drawn: number, kept: number, rows: number): string =>
  drawn === 0
    ? `Nothing to draw: none of ${count(rows, 'row', 'rows')} has both ${x} and ${y} and meets the condition.`
    : `${y} against ${x}: ${kept === rows ? count(rows, 'row', 'rows') : `${kept} of ${count(rows, 'row', 'rows')}`}${drawn === kept ? '' : `, ${drawn} of them drawn`}.`;
export const thinned = (drawn: number, kept: number): string =>
  `${drawn} of ${kept} rows are drawn, evenly taken; narrow the condition to see each.`;
export const tooManyColors = (column: string, levels: number, shown: readonly string[]): string =>
  `${column} has ${levels} values; ${listOf(shown)} are told apart, the others are drawn as one.`;
export const others = (): string => 'others';
export const noCondition = (): string => 'any condition';
export const noColor = (): string => 'nothing';
