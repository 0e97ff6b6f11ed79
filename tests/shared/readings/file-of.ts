import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { CellContext, SourceFile } from '../../../shared/cell.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';

/** A data file as a host opens it; its bytes come in pieces of `piece`. */
export function fileOf(name: string, content: string | Uint8Array, piece = 65_536): SourceFile {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  return {
    name,
    size: bytes.length,
    hash: createHash('sha256').update(bytes).digest('hex'),
    open: async function* () {
      for (let from = 0; from < bytes.length; from += piece) yield bytes.subarray(from, from + piece);
    },
  };
}

export const diskFile = (path: string): SourceFile =>
  fileOf(path.replace(/^.*\//, ''), new Uint8Array(readFileSync(path)));

export function contextOf(files: readonly SourceFile[] = [], asOf = '2026-11-15'): CellContext {
  return {
    asOf: readIsoDate(asOf),
    seed: 1,
    signal: new AbortController().signal,
    source: (key) => files.find(({ name }) => name === key),
    progress: () => {},
    pause: async () => {},
  };
}
