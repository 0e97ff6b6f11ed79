import type { DecimalMark } from './decimal-mark.ts';
import type { FileRead } from './file-read.ts';

/** Rows of a file that are set aside since a number of theirs has the other decimal mark. */
export interface OtherMarks {
  readonly file: string;
  /** The mark by which the file is read. */
  readonly decimal: DecimalMark;
  readonly example: string;
  readonly rows: number;
  readonly line: number;
}

/** Fewer are slips of the pen; each row's reason says so. */
const LEAST_ROWS = 2;

/** One entry a file: such numbers may come only where nobody asks any more, far below the rows by which it was planned. */
export function otherMarks(reads: readonly FileRead[]): readonly OtherMarks[] {
  return reads.flatMap(({ plan: { file, decimal }, reader, setAside }) => {
    const rows = setAside.filter(({ reason }) => reader.otherMarks.has(reason));
    if (rows.length < LEAST_ROWS) return [];
    const first = rows.reduce((least, row) => (row.line < least.line ? row : least));
    return [{ file, decimal, example: reader.otherMarks.get(first.reason) ?? '', rows: rows.length, line: first.line }];
  });
}
