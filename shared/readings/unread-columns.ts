import { type FilePlan, HEAD_NOT_UNDERSTOOD, wordsNotUnderstood } from './mapping.ts';

/** Columns of a file whose heads nobody understood. */
export interface UnreadColumns {
  readonly file: string;
  readonly heads: readonly string[];
}

export function unreadColumns({ file, columns }: FilePlan): readonly UnreadColumns[] {
  const heads = columns.flatMap(({ head, reason }) => (reason === HEAD_NOT_UNDERSTOOD ? head.trim() : []));
  return heads.length > 0 ? [{ file, heads }] : [];
}

/** Columns that are the fire or the state by their heads, and by none of their values. */
export function strangeWords({ file, columns }: FilePlan): readonly { file: string; head: string; field: string }[] {
  return columns.flatMap(({ head, reason }) =>
    (['fire', 'state'] as const)
      .filter((field) => reason === wordsNotUnderstood(field))
      .map((field) => ({ file, head: head.trim(), field })),
  );
}
