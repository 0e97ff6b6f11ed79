import * as say from '../messages/correction-words.ts';
import { rowWords } from '../messages/corrections.ts';
import { readingsSchema } from '../schemas/readings.ts';
import type { Correction, CorrectionDone, RowKey } from './correction.ts';

/** What a correction does, in one clause that begins with a capital and ends without a point. */
export function correctionWords(done: CorrectionDone): string {
  switch (done.action) {
    case 'change':
      return changeWords(rowText(done.row), done.column, done.value);
    case 'set_aside':
      return say.isSetAside(rowText(done.row));
    case 'restore':
      return say.countsAgain(rowText(done.row));
    case 'merge_units':
      return say.belongsTo(done.from, done.to);
    case 'swap_units':
      return say.areSwapped(...done.units, done.visited_on);
  }
}

/** The same with who made it, when and why. */
export const signedCorrection = (correction: Correction): string =>
  say.signed(correctionWords(correction), correction.initials, correction.made_on, correction.reason);

function changeWords(row: string, column: string, value: string): string {
  if (column === 'fire') return say.fireIs(row, plain(value));
  if (column === 'state') return say.stateIs(row, plain(value));
  const known = readingsSchema.find(({ name }) => name === column);
  return say.valueIs(known?.title ?? plain(column), row, value, known?.shownUnit ?? '');
}

const rowText = ({ unit, taken_at, fire, state, nth }: RowKey): string =>
  say.numbered(rowWords(unit, taken_at.replace('T', ' '), plain(fire), state), nth);

const plain = (code: string): string => code.replaceAll('_', ' ');
