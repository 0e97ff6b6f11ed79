import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { SourceFile } from '../cell.ts';

/** The bytes of a file as they are read again, and whether they were those that were hashed when it was opened. */
export class CheckedBytes {
  readonly #file: SourceFile;
  readonly #hash = sha256.create();

  constructor(file: SourceFile) {
    this.#file = file;
  }

  async *bytes(): AsyncGenerator<Uint8Array> {
    for await (const piece of this.#file.open()) {
      if (this.#file.hash !== '') this.#hash.update(piece);
      yield piece;
    }
  }

  /** Once all bytes are read; true where the file came without a hash. */
  same(): boolean {
    return this.#file.hash === '' || bytesToHex(this.#hash.digest()) === this.#file.hash;
  }
}
