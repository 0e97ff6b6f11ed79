import { open } from 'node:fs/promises';

/** Text is gathered to about this many characters before it goes to disk. */
const BLOCK = 1 << 20;

/** Writes a new file; it must not be there yet. */
export async function writePieces(path: string, pieces: Iterable<string>): Promise<void> {
  const file = await open(path, 'wx');
  try {
    let block = '';
    for (const piece of pieces) {
      block += piece;
      if (block.length < BLOCK) continue;
      await file.writeFile(block);
      block = '';
    }
    await file.writeFile(block);
  } finally {
    await file.close();
  }
}
