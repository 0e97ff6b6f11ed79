import { type Outcome, succeed } from '../../shared/outcome.ts';
import type { DataReference, NotebookDocument } from '../notebook/document.ts';
import { mergeDocuments, sameDocument } from '../notebook/merge/merge-documents.ts';
import type { MergeAnswers, MergeConflict } from './protocol.ts';

export interface MergedInto {
  /** The open document itself where the other one brings nothing new. */
  readonly document: NotebookDocument;
  readonly conflicts: readonly MergeConflict[];
}

/** The open notebook with what another one of its fleet holds, and the conflicts that no answer settles. */
export function mergeInto(open: NotebookDocument, other: NotebookDocument, answers: MergeAnswers): Outcome<MergedInto> {
  const conflicts = new Map<string, MergeConflict>();
  const merged = mergeDocuments(open, other, ({ place: field }, here, there) => {
    const file = dataKey(field);
    const place = file === undefined ? field : `data ${file}`;
    const answer = Object.hasOwn(answers, place) ? answers[place] : undefined;
    if (answer === undefined) {
      // Size and hash of a file are one question: which content counts.
      const sides = file === undefined ? { here, there } : { here: entryOf(open, file), there: entryOf(other, file) };
      conflicts.set(place, { place, ...sides });
    }
    return answer === 'there' ? 'second' : 'first';
  });
  if (merged.status !== 'value') return merged;
  const { document } = merged.value;
  return succeed({ document: sameDocument(document, open) ? open : document, conflicts: [...conflicts.values()] });
}

const dataKey = (place: string): string | undefined => /^notebook\.data\[(.*)\]\.\w+$/s.exec(place)?.[1];

const entryOf = ({ data }: NotebookDocument, key: string): DataReference | undefined =>
  data.find((entry) => entry.key === key);
