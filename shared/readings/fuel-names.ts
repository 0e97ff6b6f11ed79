import { findFuel } from '../fuels/find-fuel.ts';
import { FUELS } from '../fuels/fuel-list.ts';
import * as say from '../messages/import.ts';
import { nearestName } from '../names/nearest-name.ts';
import { plainWords } from './plain-words.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { VALUE_WORDS } from './value-words.ts';
import { NOT_UNDERSTOOD } from './word-meaning.ts';

/** The canonical name of a fuel as people write it; '' where nobody knows it. `own` are the notebook's further fuels. */
export function fuelName(written: string, own: readonly string[] = []): string {
  const text = written.trim();
  if (own.includes(text)) return text;
  const known = VALUE_WORDS.fuel.get(plainWords(text));
  if (known !== undefined) return known;
  return findFuel(text).status === 'value' ? text.toLowerCase().replace(/[\s-]+/g, '_') : '';
}

/** The known fuel name that is nearest to a text; '' where none is near. */
export function nearestFuel(written: string): string {
  const names = FUELS.map(({ name }) => name);
  const plain = plainWords(written).replaceAll(' ', '_');
  const near = nearestName(plain, names);
  if (near !== '') return near;
  return VALUE_WORDS.fuel.get(nearestName(plainWords(written), VALUE_WORDS.fuel.keys())) ?? '';
}

/** Puts fuels as known into the column; returns one sentence about the first row whose fuel nobody knows, else ''. */
export function checkFuels(columns: ReadingColumns, own: readonly string[]): string {
  const fuels = columns.texts.get('fuel');
  if (!fuels?.levels.some((level) => level.startsWith(NOT_UNDERSTOOD))) return '';
  fuels.rename(columns.rows, (text) => {
    if (!text.startsWith(NOT_UNDERSTOOD)) return text;
    const written = text.slice(1);
    return fuelName(written, own) || text;
  });
  for (let row = 0; row < columns.rows; row++) {
    const text = fuels.text(row);
    if (columns.status[row] !== ROW.accepted || !text.startsWith(NOT_UNDERSTOOD)) continue;
    const file = columns.files[columns.fileOf(row)];
    return say.unknownFuel(file, columns.lines[row], text.slice(1), nearestFuel(text.slice(1)));
  }
  return '';
}
