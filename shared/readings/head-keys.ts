/**
 * What profiles call the columns of a head line: the head, and of equal heads under several groups the second is
 * "O2 (2)", so that each can be answered for itself.
 */
export function headKeys(heads: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return heads.map((head) => {
    const name = head.trim();
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return times === 1 || name === '' ? name : `${name} (${times})`;
  });
}
