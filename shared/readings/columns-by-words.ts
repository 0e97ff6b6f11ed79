import { type ColumnMapping, HEAD_NOT_UNDERSTOOD } from './mapping.ts';
import { plainWords } from './plain-words.ts';
import { VALUE_WORDS } from './value-words.ts';

/** Words of which nothing but a fire is called high or low; common practice of these languages, no source. */
const OF_A_FIRE =
  /fire|load|stage|flame|last|stufe|charge|puissance|feu|allure|carga|potencia|fuego|llama|etapa|carico|potenza|fiamma|stadio|vuur|trap/;
/** Words that stand beside numbers too. */
const IS_NUMBER = /\d/;

/**
 * Takes columns by their values where the head does not do: a firing rate that is told in words is the fire, and so is a
 * column under an unknown head that holds nothing but words such as "full load"; one that holds nothing but words such as
 * "before" and "after" is the state. Only where no other column says it.
 */
export function columnsByWords(
  columns: readonly ColumnMapping[],
  rows: readonly (readonly string[])[],
): readonly ColumnMapping[] {
  let settled = columns;
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

/** The different values of a column, as plain words; empty cells say nothing. */
function wordsIn(rows: readonly (readonly string[])[], index: number): readonly string[] {
  const cells = new Set(rows.map((row) => (row[index] ?? '').trim()));
  cells.delete('');
  return [...new Set([...cells].map(plainWords))];
}
