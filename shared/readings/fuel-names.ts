import * as say from '../messages/import.ts';
import { plainWords } from './plain-words.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { VALUE_WORDS } from './value-words.ts';
import { NOT_UNDERSTOOD } from './word-meaning.ts';

const BLEND = /^natural_gas_h2_(\d{1,3})$/;

/** Whether a fuel name is one that the project knows; NN in natural_gas_h2_NN is 0 to 100 % hydrogen by volume. */
export function isKnownFuel(name: string): boolean {
  const blend = BLEND.exec(name);
  return blend ? Number(blend[1]) <= 100 : Object.values(Object.fromEntries(VALUE_WORDS.fuel)).includes(name);
}

/** The canonical name of a fuel as people write it; '' where nobody knows it. `own` are the notebook's further fuels. */
export function fuelName(written: string, own: readonly string[] = []): string {
  const text = written.trim();
  if (own.includes(text)) return text;
  const lower = text.toLowerCase();
  if (BLEND.test(lower)) return isKnownFuel(lower) ? lower : '';
  return VALUE_WORDS.fuel.get(plainWords(text)) ?? '';
}

/** The known fuel name that is nearest to a text; '' where none is near. */
export function nearestFuel(written: string): string {
  const text = plainWords(written);
  let best = '';
  let least = Math.max(2, text.length / 3);
  for (const [word, name] of VALUE_WORDS.fuel) {
    const distance = edits(text, word);
    if (distance < least) [best, least] = [name, distance];
  }
  return best;
}

/** Puts fuels as known into the column; returns one sentence about the first row whose fuel nobody knows, else ''. */
export function checkFuels(columns: ReadingColumns, status: Uint8Array, own: readonly string[]): string {
  const fuels = columns.texts.get('fuel');
  if (!fuels?.levels.some((level) => level.startsWith(NOT_UNDERSTOOD))) return '';
  fuels.rename(columns.rows, (text) => {
    if (!text.startsWith(NOT_UNDERSTOOD)) return text;
    const written = text.slice(1);
    return fuelName(written, own) || text;
  });
  for (let row = 0; row < columns.rows; row++) {
    const text = fuels.text(row);
    if (status[row] === ROW.setAside || !text.startsWith(NOT_UNDERSTOOD)) continue;
    const file = columns.files[columns.fileOf(row)];
    return say.unknownFuel(file, columns.lines.get(row), text.slice(1), nearestFuel(text));
  }
  return '';
}

/** Levenshtein distance. */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length];
}
