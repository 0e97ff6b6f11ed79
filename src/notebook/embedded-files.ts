import type { SourceFile, SourceKey } from '../../shared/cell.ts';
import { hashBytes } from '../storage/hash-bytes.ts';
import type { NotebookDocument } from './document.ts';

/** The data files that the notebook carries along as text. */
export async function embeddedFiles({ data }: NotebookDocument): Promise<Map<SourceKey, SourceFile>> {
  const files = new Map<SourceKey, SourceFile>();
  for (const { key, name, text } of data) {
    if (text === undefined) continue;
    const bytes = new TextEncoder().encode(text);
    const open = async function* (): AsyncGenerator<Uint8Array> {
      yield bytes;
    };
    files.set(key, { name, size: bytes.length, hash: await hashBytes(open()), open });
  }
  return files;
}
