import { textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';

/** Between two lists of raised units: who is new on it, who no longer, who for other reasons. In order of rank. */
export interface RaisedChanges {
  readonly newly: readonly { readonly unit: string; readonly reasons: string }[];
  readonly cleared: readonly { readonly unit: string; readonly reasons: string }[];
  readonly otherwise: readonly { readonly unit: string; readonly before: string; readonly after: string }[];
  /** Units on the later list. */
  readonly raised: number;
}

export function raisedChanges(before: Table, after: Table): RaisedChanges {
  const [old, now] = [reasonsOf(before), reasonsOf(after)];
  const missingIn = (list: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>) =>
    [...list].filter(([unit]) => !other.has(unit)).map(([unit, reasons]) => ({ unit, reasons }));
  return {
    newly: missingIn(now, old),
    cleared: missingIn(old, now),
    otherwise: [...now].flatMap(([unit, reasons]) => {
      const was = old.get(unit);
      return was !== undefined && was !== reasons ? [{ unit, before: was, after: reasons }] : [];
    }),
    raised: now.size,
  };
}

/** Units in the order of their rank, each with its reasons in words. */
function reasonsOf(raised: Table): Map<string, string> {
  const [unit, fire, reason] = ['unit', 'fire', 'reason'].map((name) => textsOf(raised, name));
  const units = new Map<string, Set<string>>();
  for (let row = 0; row < raised.rows; row++) {
    const name = textAt(unit, row);
    const at = [textAt(fire, row), textAt(reason, row).replaceAll('_', ' ')].filter((part) => part !== '').join(': ');
    units.set(name, (units.get(name) ?? new Set()).add(at));
  }
  return new Map([...units].map(([name, reasons]) => [name, [...reasons].sort().join(', ')]));
}
