import { conversion } from '../quantities/convert.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { READING_FIELDS } from './fields.ts';
import type { FilePlan } from './mapping.ts';
import type { ReadingColumns } from './reading-columns.ts';

/** Enough rows to meet every digit that a column prints. */
const LOOKED_AT = 500;
const MOST_DECIMALS = 4;
/** Written out, since a power differs in its last bit between engines. */
const POWERS_OF_TEN = [1, 10, 100, 1000, 10_000] as const;

/**
 * The step between neighboring printed numbers of a field in a file, in the unit that is kept: a column of whole °F has
 * steps of 0.556 °C. Found from the numbers of the column, when first asked for.
 */
export function printedSteps(
  columns: ReadingColumns,
  plans: readonly FilePlan[],
): (field: string, file: number) => number {
  const known = new Map<string, number>();
  return (field, file) => {
    const key = `${file} ${field}`;
    const step = known.get(key) ?? findStep(columns, plans[file], field, file);
    known.set(key, step);
    return step;
  };
}

function findStep(columns: ReadingColumns, plan: FilePlan, field: string, file: number): number {
  const kept = findUnit(READING_FIELDS.find(({ name }) => name === field)?.unit ?? '');
  const printed = findUnit(plan.columns.find((column) => column.field === field)?.unit ?? '');
  const into = kept && printed ? conversion(kept, printed) : undefined;
  const back = (value: number): number => (into ? value * into.factor + into.offset : value);
  const [from, to] = [columns.fileStarts[file], columns.fileEnd(file)];
  const each = Math.max(1, Math.floor((to - from) / LOOKED_AT));
  let decimals = 0;
  for (let row = from; row < to && decimals < MOST_DECIMALS; row += each) {
    const value = back(columns.numbers.get(field)?.get(row) ?? Number.NaN);
    while (decimals < MOST_DECIMALS && !isWhole(value * POWERS_OF_TEN[decimals])) decimals++;
  }
  return Math.abs(1 / POWERS_OF_TEN[decimals] / (into?.factor ?? 1));
}

/** NaN counts as whole: it says nothing. */
const isWhole = (value: number): boolean =>
  !(Math.abs(value - Math.round(value)) > 1e-6 * Math.max(1, Math.abs(value) * 1e-3));
