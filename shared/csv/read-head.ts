/** The first bytes of a file, at most `limit` of them, and whether these are all. Closes the file early. */
export async function readHead(
  bytes: AsyncIterable<Uint8Array>,
  limit: number,
): Promise<{ head: Uint8Array; whole: boolean }> {
  const head = new Uint8Array(limit);
  let length = 0;
  for await (const chunk of bytes) {
    const taken = chunk.subarray(0, limit - length);
    head.set(taken, length);
    length += taken.length;
    if (taken.length < chunk.length) return { head: head.subarray(0, length), whole: false };
  }
  return { head: head.subarray(0, length), whole: true };
}
