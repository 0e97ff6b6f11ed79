import type { Correction } from '../../../shared/corrections/correction.ts';
import { signedCorrection } from '../../../shared/corrections/correction-words.ts';
import { readCorrections } from '../../../shared/corrections/read-corrections.ts';
import * as say from '../../../shared/messages/merge.ts';
import type { CellEntry } from '../document.ts';

/** Corrections that were made, lifted off, laid back on or are gone, one line each; nothing for cells of other kinds. */
export function compareCorrections(before: CellEntry | undefined, after: CellEntry): readonly string[] {
  if (after.kind !== 'corrections') return [];
  const [old, now] = [before, after].map((cell) => new Map(listOf(cell).map((entry) => [entry.id, entry])));
  const lines = [...now.values()].flatMap((entry) => {
    const was = old.get(entry.id);
    if (!was) return [say.correctionAdded(signedCorrection(entry), entry.lifted)];
    if (was.lifted === entry.lifted) return [];
    return [
      entry.lifted ? say.correctionLifted(signedCorrection(entry)) : say.correctionLaidOn(signedCorrection(entry)),
    ];
  });
  const gone = [...old.values()].filter(({ id }) => !now.has(id));
  return [...lines, ...gone.map((entry) => say.correctionGone(signedCorrection(entry)))];
}

function listOf(cell: CellEntry | undefined): readonly Correction[] {
  const read = readCorrections(cell?.parameters['corrections'] ?? []);
  return read.status === 'value' ? read.value : [];
}
