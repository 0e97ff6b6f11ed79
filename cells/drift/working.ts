import { judgedLevel } from '../../shared/foresight/judged-level.ts';
import { workingOfFit } from '../../shared/foresight/working-of-fit.ts';
import * as say from '../../shared/messages/judged-working.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Working } from '../../shared/working/working.ts';
import type { DriftParameters } from './parameters.ts';

/** Columns that show their working. */
export const WORKED: readonly string[] = ['level_now', 'margin_now'];

/** How a level, or its margin to the nearer limit, came about: from the last reading of its lane. */
export function workingOfLevel(
  column: string,
  row: number,
  { drift, derived, readings }: { readonly drift: Table; readonly derived: Table; readonly readings: Table },
  { derive, referenceAir }: DriftParameters,
): Outcome<Working> {
  if (!WORKED.includes(column)) return fail(say.notWorked(column, WORKED.join(', ')));
  if (!Number.isFinite(numbersOf(drift, column)[row])) return fail(say.noRow(column));
  const text = (name: string): string => textAt(textsOf(drift, name), row);
  const judged = judgedLevel(drift, row, true);
  const ground = {
    ...{ derived, readings, cell: derive, unit: text('unit'), fuel: text('fuel'), fire: text('fire') },
    column: referenceAir ? judged.column : judged.column.replace('_reference', ''),
    source: 'stateSpace',
  };
  const margin = column === 'margin_now' ? { ...judged, source: 'jcgm106' } : undefined;
  return succeed(workingOfFit(column, judged.level, ground, margin));
}
