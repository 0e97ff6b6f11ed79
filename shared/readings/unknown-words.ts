import type { FileRead } from './file-read.ts';
import { plainWords } from './plain-words.ts';

/** A word for the fire or the state that no list and no profile has, and the rows that are set aside for it. */
export interface UnknownWord {
  readonly file: string;
  readonly head: string;
  readonly field: string;
  readonly word: string;
  readonly rows: number;
  /** The first of them. */
  readonly line: number;
}

/** One entry a word, whatever the number of its rows, in the order of the files. */
export function unknownWords(reads: readonly FileRead[]): readonly UnknownWord[] {
  return reads.flatMap(({ plan: { file }, reader, setAside }) => {
    const found = new Map<string, UnknownWord>();
    for (const { reason, line } of setAside) {
      const strange = reader.words.get(reason);
      if (!strange) continue;
      // A profile's words are compared in the same way.
      const key = `${strange.field} ${strange.head} ${plainWords(strange.word)}`;
      const seen = found.get(key) ?? { file, ...strange, rows: 0, line };
      found.set(key, { ...seen, rows: seen.rows + 1, line: Math.min(seen.line, line) });
    }
    return [...found.values()];
  });
}
