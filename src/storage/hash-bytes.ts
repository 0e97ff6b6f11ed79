import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** SHA-256 of a stream of bytes as lower-case hexadecimal, the same in browsers (served plainly, too) and Node. */
export async function hashBytes(pieces: AsyncIterable<Uint8Array>): Promise<string> {
  const hash = sha256.create();
  for await (const piece of pieces) hash.update(piece);
  return bytesToHex(hash.digest());
}
