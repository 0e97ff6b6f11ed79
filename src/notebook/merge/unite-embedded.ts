import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { DataReference, NotebookDocument } from '../document.ts';

type Data = NotebookDocument['data'];

/**
 * Both data lists with the tables in one that both carry along and to which each has only added lines: those of both are in
 * it, each once. Tables that differ in any other way are left to be asked about.
 */
export function uniteEmbedded(first: Data, second: Data): readonly [Data, Data] {
  const others = new Map(second.map((entry) => [entry.key, entry]));
  const united = new Map<string, string>();
  for (const { key, text } of first) {
    const other = others.get(key)?.text;
    if (text === undefined || other === undefined || text === other) continue;
    const both = uniteLines(text, other);
    if (both !== undefined) united.set(key, both);
  }
  const replace = (list: Data): Data =>
    list.map((entry) => {
      const text = united.get(entry.key);
      return text === undefined ? entry : withText(entry, text);
    });
  return united.size === 0 ? [first, second] : [replace(first), replace(second)];
}

function withText(entry: DataReference, text: string): DataReference {
  const bytes = utf8ToBytes(text);
  return { ...entry, text, size: bytes.length, hash: bytesToHex(sha256(bytes)) };
}

/** Undefined where the tables have not even their head in common, or where one altered or removed a line of the other. */
function uniteLines(first: string, second: string): string | undefined {
  const [one, other] = [first, second].map((text) => text.replace(/\r?\n$/, '').split(/\r?\n/));
  let same = 0;
  while (same < one.length && same < other.length && one[same] === other[same]) same++;
  if (same === 0) return undefined;
  const [mine, theirs] = [one.slice(same), other.slice(same)];
  // A line with an open quotation mark goes on in the next one: such a table is not taken apart.
  if ([...mine, ...theirs].some((line) => (line.split('"').length - 1) % 2 === 1)) return undefined;
  const added = [...new Set([...mine, ...theirs])].sort();
  return `${[...one.slice(0, same), ...added].join('\n')}\n`;
}
