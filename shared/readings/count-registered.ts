import { textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';

/** How many of some units the register has, and how many are strangers to it. Without a register, or with one of no units, none is a stranger. */
export function countRegistered(
  units: Iterable<string>,
  register: Table | undefined,
): { readonly registered: number; readonly strangers: number } {
  const known = register && register.rows > 0 && new Set(textsOf(register, 'unit').levels);
  let [registered, strangers] = [0, 0];
  for (const unit of new Set(units)) {
    if (!known || known.has(unit)) registered++;
    else strangers++;
  }
  return { registered, strangers };
}
