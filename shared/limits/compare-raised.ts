import * as say from '../messages/merge.ts';
import type { Table } from '../table/table.ts';
import { raisedChanges } from './raised-changes.ts';

/** Which units are raised anew, no longer, or for other reasons, one line each; new ones first. */
export function compareRaised(before: Table, after: Table): readonly string[] {
  const { newly, cleared, otherwise, raised } = raisedChanges(before, after);
  const lines = [
    ...newly.map(({ unit, reasons }) => say.newlyRaised(unit, reasons)),
    ...cleared.map(({ unit, reasons }) => say.cleared(unit, reasons)),
    ...otherwise.map((change) => say.otherReasons(change.unit, change.before, change.after)),
  ];
  return lines.length > 0 ? lines : [say.sameRaised(raised)];
}
