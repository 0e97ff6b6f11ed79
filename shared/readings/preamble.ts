import type { Constant } from './mapping.ts';
import { plainWords } from './plain-words.ts';
import { understandHead } from './understand-head.ts';
import type { Vocabulary } from './vocabulary.ts';

/** What a preamble can say for all readings below it. A date there is the day of the export, no reading's. */
const TOLD_ONCE = new Set(['unit', 'analyzer', 'calibrated_on', 'technician', 'fuel', 'visit', 'visit_reason']);
/** Heads that mean something else above a table than in it. */
const AMBIGUOUS = new Set(['test', 'record', 'data', 'device', 'meter', 'tag']);

/** How the reason of such a constant ends. */
export const ABOVE = 'above the table';

/** Name-value lines above a table ("Analyzer: 4711", "Kessel;B-07") that hold for all its rows. */
export function preambleConstants(preamble: readonly (readonly string[])[], vocabulary: Vocabulary): Constant[] {
  const constants: Constant[] = [];
  for (const record of preamble) {
    const cells = record.map((cell) => cell.trim()).filter((cell) => cell !== '');
    const [name, value] = cells.length === 1 ? splitOnce(cells[0]) : [cells[0]?.replace(/\s*[:=]$/, ''), cells[1]];
    if (name === undefined || value === undefined || cells.length > 2) continue;
    const field = understandHead(name, vocabulary)?.field ?? '';
    if (!TOLD_ONCE.has(field) || AMBIGUOUS.has(plainWords(name)) || constants.some((known) => known.field === field))
      continue;
    constants.push({ field, value, reason: `"${name}" ${ABOVE}` });
  }
  return constants;
}

function splitOnce(line: string): [string, string] | [undefined, undefined] {
  const match = /^([^:=]{1,40}?)\s*[:=]\s*(.+)$/.exec(line);
  return match ? [match[1], match[2].trim()] : [undefined, undefined];
}
