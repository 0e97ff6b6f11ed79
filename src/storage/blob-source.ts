import type { SourceFile } from '../../shared/cell.ts';
import { hashBytes } from './hash-bytes.ts';

/** A file that the user opened in the browser, or one fetched from beside the page. */
export async function blobSource(name: string, blob: Blob): Promise<SourceFile> {
  const open = (): AsyncIterable<Uint8Array> => piecesOf(blob);
  return { name, size: blob.size, hash: await hashBytes(open()), open };
}

/** Not every browser lets a stream be iterated, so it is read by hand. */
async function* piecesOf(blob: Blob): AsyncGenerator<Uint8Array> {
  const reader = blob.stream().getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    reader.releaseLock();
  }
}
