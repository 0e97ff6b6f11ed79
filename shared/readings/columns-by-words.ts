import { type ColumnMapping, HEAD_NOT_UNDERSTOOD, wordsNotUnderstood } from './mapping.ts';
import { plainWords } from './plain-words.ts';
import type { Profile } from './profile.ts';
import { VALUE_WORDS } from './value-words.ts';

/** Words of which nothing but a fire is called high or low; common practice of these languages, no source. */
const OF_A_FIRE =
  /fire|load|stage|flame|last|stufe|charge|puissance|feu|allure|carga|potencia|fuego|llama|etapa|carico|potenza|fiamma|stadio|vuur|trap/;
/** Words that stand beside numbers too. */
const IS_NUMBER = /\d/;

/**
 * Takes columns by their values where the head does not do: a firing rate that is told in words is the fire, and so is a
 * column under an unknown head that holds nothing but words such as "full load"; one that holds nothing but words such as
 * "before" and "after" is the state. Only where no other column says it. `given` are words that a profile adds.
 */
export function columnsByWords(
  columns: readonly ColumnMapping[],
  rows: readonly (readonly string[])[],
  given: Partial<Profile['words']> = {},
): readonly ColumnMapping[] {
  let settled = columns.map((column) => withoutStrangeWords(column, columns, rows, given));
  for (const field of ['fire', 'state'] as const) {
    const isSaid = settled.some((column) => column.field === field || column[field] !== '');
    const told = isSaid ? [] : settled.filter((column) => isToldBy(column, field, wordsIn(rows, column.index)));
    if (told.length !== 1) continue;
    const reason = `its values are words for the ${field}`;
    settled = settled.map((column) =>
      column === told[0] ? { ...column, field, unit: '', confidence: CONFIDENCE, reason } : column,
    );
  }
  return settled;
}

const CONFIDENCE = 0.85;

function isToldBy(
  { field, reason, confidence }: ColumnMapping,
  wanted: 'fire' | 'state',
  words: readonly string[],
): boolean {
  const meanings = words.map((word) => VALUE_WORDS[wanted].get(word));
  if (words.length === 0 || meanings.includes(undefined) || words.some((word) => IS_NUMBER.test(word))) return false;
  const tells = (one: string, other: string): boolean => meanings.includes(one) || meanings.includes(other);
  if (wanted === 'state') return reason === HEAD_NOT_UNDERSTOOD && tells('as_found', 'as_left');
  if (!tells('high', 'low')) return false;
  // The project's own names and those of a profile mean what they say.
  if (field === 'firing_rate_pct') return confidence < 1;
  return reason === HEAD_NOT_UNDERSTOOD && words.every((word) => OF_A_FIRE.test(word));
}

/**
 * A column that is the fire or the state by its head and none of whose values is a word for it: numbers up to a hundred
 * are a firing rate; else it is something else ("pass", "fail"), and no reading is lost over it.
 */
function withoutStrangeWords(
  column: ColumnMapping,
  columns: readonly ColumnMapping[],
  rows: readonly (readonly string[])[],
  given: Partial<Profile['words']>,
): ColumnMapping {
  const { field, confidence, index } = column;
  if ((field !== 'fire' && field !== 'state') || confidence === 1) return column;
  const words = wordsIn(rows, index);
  const numbers = words.map(Number);
  const isRate = field === 'fire' && numbers.every((value) => value >= 0) && Math.max(...numbers) > MOST_STAGES;
  if (words.length > 0 && isRate && !columns.some((other) => other.field === 'firing_rate_pct'))
    return { ...column, field: 'firing_rate_pct', unit: '%', confidence: CONFIDENCE, reason: 'its values are numbers' };
  const own = new Set(Object.keys(given[field] ?? {}).map(plainWords));
  const isStrange = (word: string): boolean => !VALUE_WORDS[field].has(word) && !own.has(word) && !IS_NUMBER.test(word);
  if (words.length === 0 || !words.every(isStrange)) return column;
  return { ...column, field: '', unit: '', confidence: 0, reason: wordsNotUnderstood(field) };
}

/** Burners have no more stages than this; larger numbers are per cent. */
const MOST_STAGES = 4;

/** The different values of a column, as plain words; empty cells say nothing. */
function wordsIn(rows: readonly (readonly string[])[], index: number): readonly string[] {
  const cells = new Set(rows.map((row) => (row[index] ?? '').trim()));
  cells.delete('');
  return [...new Set([...cells].map(plainWords))];
}
