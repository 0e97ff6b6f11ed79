import * as say from '../../../shared/messages/merge.ts';
import { textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';

/** Which units are raised anew, no longer, or for other reasons, one line each; new ones first. */
export function compareRaised(before: Table, after: Table): readonly string[] {
  const [old, now] = [reasonsOf(before), reasonsOf(after)];
  const added = [...now]
    .filter(([unit]) => !old.has(unit))
    .map(([unit, reasons]) => say.newlyRaised(unit, words(reasons)));
  const gone = [...old].filter(([unit]) => !now.has(unit)).map(([unit, reasons]) => say.cleared(unit, words(reasons)));
  const other = [...now].flatMap(([unit, reasons]) => {
    const was = old.get(unit);
    return was && words(was) !== words(reasons) ? [say.otherReasons(unit, words(was), words(reasons))] : [];
  });
  const lines = [...added, ...gone, ...other];
  return lines.length > 0 ? lines : [say.sameRaised(now.size)];
}

/** Units in the order of their rank, each with its reasons. */
function reasonsOf(raised: Table): Map<string, Set<string>> {
  const [unit, fire, reason] = ['unit', 'fire', 'reason'].map((name) => textsOf(raised, name));
  const units = new Map<string, Set<string>>();
  for (let row = 0; row < raised.rows; row++) {
    const name = textAt(unit, row);
    const at = [textAt(fire, row), textAt(reason, row).replaceAll('_', ' ')].filter((part) => part !== '').join(': ');
    units.set(name, (units.get(name) ?? new Set()).add(at));
  }
  return units;
}

const words = (reasons: ReadonlySet<string>): string => [...reasons].sort().join(', ');
