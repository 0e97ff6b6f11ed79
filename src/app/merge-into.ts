import { type Outcome, succeed } from '../../shared/outcome.ts';
import type { NotebookDocument } from '../notebook/document.ts';
import { mergeDocuments, sameDocument } from '../notebook/merge/merge-documents.ts';
import type { MergeAnswers, MergeConflict } from './protocol.ts';

export interface MergedInto {
  /** The open document itself where the other one brings nothing new. */
  readonly document: NotebookDocument;
  readonly conflicts: readonly MergeConflict[];
}

/** The open notebook with what another one of its fleet holds, and the conflicts that no answer settles. */
export function mergeInto(open: NotebookDocument, other: NotebookDocument, answers: MergeAnswers): Outcome<MergedInto> {
  const conflicts: MergeConflict[] = [];
  const merged = mergeDocuments(open, other, ({ place }, here, there) => {
    const answer = Object.hasOwn(answers, place) ? answers[place] : undefined;
    if (answer === undefined) conflicts.push({ place, here, there });
    return answer === 'there' ? 'second' : 'first';
  });
  if (merged.status !== 'value') return merged;
  const { document } = merged.value;
  return succeed({ document: sameDocument(document, open) ? open : document, conflicts });
}
