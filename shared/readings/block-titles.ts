import { type BlockDialect, type BlockTitle, nameAndValue } from '../csv/block-reader.ts';
import * as say from '../messages/import.ts';
import { readTitle, type Title } from './title-words.ts';
import { type HeadMeaning, understandHead } from './understand-head.ts';
import type { Vocabulary } from './vocabulary.ts';

/** With more different titles the lines are none. */
const MOST_TITLES = 2000;
const CONFIDENCE = 0.9;

export interface TitlesFound {
  readonly titles: BlockDialect['titles'];
  /** The names under which titles say something, as further heads of the blocks. */
  readonly heads: readonly string[];
  readonly meanings: readonly HeadMeaning[];
}

const NONE: TitlesFound = { titles: new Map(), heads: [], meanings: [] };

/**
 * Lines of a printout such as "HIGH FIRE - AS FOUND" or "Test of 12.03.2024", and what they say of the block below them.
 * Nothing is taken from them for which the blocks have a name of their own.
 */
export function findTitles(
  lines: readonly string[],
  separator: BlockDialect['separator'],
  own: readonly (HeadMeaning | undefined)[],
  vocabulary: Vocabulary,
): TitlesFound {
  const kinds = (
    [
      ['unit', 'Unit'],
      ['fire', 'Fire'],
      ['state', 'State'],
      ['date', 'Date'],
    ] as const
  ).flatMap(([kind, word]) => {
    const meaning = understandHead(word, vocabulary);
    const isOwn = own.some(
      (one) => one && (one.field === meaning?.field || ((kind === 'fire' || kind === 'state') && one[kind] !== '')),
    );
    return meaning && !isOwn ? [{ kind, name: say.headOfTitle(word), meaning }] : [];
  });
  if (kinds.length === 0) return NONE;
  const titles = new Map<string, readonly BlockTitle[]>();
  const named = new Set<string>();
  for (const line of new Set(lines.map((one) => one.trim()))) {
    const title = titleOf(line, separator, vocabulary);
    const said = title
      ? kinds.flatMap(({ kind, name }) => (title[kind] ? [{ name, value: title[kind], holds: kind === 'unit' }] : []))
      : [];
    if (said.length === 0) continue;
    titles.set(line, said);
    if (titles.size > MOST_TITLES) return NONE;
    for (const { name } of said) named.add(name);
  }
  const used = kinds.filter(({ name }) => named.has(name));
  return {
    titles,
    heads: used.map(({ name }) => name),
    meanings: used.map(({ name, meaning }) => ({
      ...meaning,
      confidence: CONFIDENCE,
      reason: say.byTitle([...titles].find(([, said]) => said.some((one) => one.name === name))?.[0] ?? ''),
    })),
  };
}

function titleOf(line: string, separator: BlockDialect['separator'], vocabulary: Vocabulary): Title | undefined {
  if (line === '' || line.length > 120) return undefined;
  const pair = nameAndValue(line, separator);
  return pair && understandHead(pair[0], vocabulary) ? undefined : readTitle(line);
}
