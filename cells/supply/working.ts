import { judgedDrop } from '../../shared/foresight/judged-drop.ts';
import { workingOfFit } from '../../shared/foresight/working-of-fit.ts';
import * as say from '../../shared/messages/judged-working.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Working } from '../../shared/working/working.ts';
import type { SupplyParameters } from './parameters.ts';

/** Columns that show their working. */
export const WORKED: readonly string[] = ['drop_now_Pa'];

/** How the drop of a unit came about, and what it leaves to its limit where that is known: from the last drop that was read. */
export function workingOfDrop(
  column: string,
  row: number,
  { supply, derived, readings }: { readonly supply: Table; readonly derived: Table; readonly readings: Table },
  { derive }: SupplyParameters,
): Outcome<Working> {
  if (!WORKED.includes(column)) return fail(say.notWorked(column, WORKED.join(', ')));
  if (!Number.isFinite(numbersOf(supply, column)[row])) return fail(say.noRow(column));
  const ground = {
    ...{ derived, readings, cell: derive, unit: textAt(textsOf(supply, 'unit'), row), fuel: '', fire: '' },
    column: 'supply_drop_Pa',
    source: 'supplyDrop',
  };
  return succeed(workingOfFit(column, judgedDrop(supply, row).drop, ground));
}
