import { plainWords } from './plain-words.ts';
import { VALUE_WORDS, type WordColumn } from './value-words.ts';

/** What is written for "not known" where words stand; by plainWords. */
const UNKNOWN = new Set([
  '',
  'n a',
  'na',
  'unknown',
  'none',
  'null',
  'nan',
  'unbekannt',
  'inconnu',
  'desconocido',
  'sconosciuto',
  'onbekend',
  'k a',
]);
/** The same as it is written; tested on every new text, so it is one expression. */
const UNKNOWN_TEXT =
  /^(?:n\.?\/?\s?a\.?|#n\/a|unknown|none|null|nan|unbekannt|inconnu|desconocido|sconosciuto|onbekend|k\.\s?a\.|[-–—.?*]+)$/i;
/** Stands before a text that was not understood. A cell that itself begins with this character is not understood either. */
export const NOT_UNDERSTOOD = '\u0000';

/** How spreadsheets keep the zeros of "0012": as a formula that gives the text. */
const AS_TEXT = /^="([^"]*)"$/;

/** A text as it is kept: trimmed, '' for marks of unknown. */
export function keptText(written: string): string {
  const text = written.trim().replace(AS_TEXT, '$1');
  return text.length < 12 && UNKNOWN_TEXT.test(text) ? '' : text;
}

/** The canonical value of a word; '' where unknown, NOT_UNDERSTOOD before what no list knows. */
export function wordMeaning(
  column: WordColumn,
  own: Readonly<Record<string, string>> = {},
): (written: string) => string {
  const words = VALUE_WORDS[column];
  const given = new Map(Object.entries(own).map(([word, value]) => [plainWords(word), value]));
  return (written) => {
    const plain = plainWords(written);
    const meaning = given.get(plain) ?? words.get(plain);
    if (meaning !== undefined) return meaning;
    if (UNKNOWN.has(plain)) return '';
    // "High (100 %)", "As found (1)".
    const bare = column === 'fire' || column === 'state' ? words.get(plain.replace(/(?: \d+)+$/, '')) : undefined;
    if (bare !== undefined) return bare;
    // A rate in per cent names no fire point.
    if (column === 'fire' && /^\d{1,3}$/.test(plain)) return 'unnamed';
    // Reasons are the user's own words where they are none of ours.
    if (column === 'visit_reason') return written.trim();
    return `${NOT_UNDERSTOOD}${written.trim()}`;
  };
}
