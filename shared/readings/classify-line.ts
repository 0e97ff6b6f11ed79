import { findUnit } from '../quantities/find-unit.ts';
import { lettersOf } from './letters-of.ts';
import type { FilePlan } from './mapping.ts';
import { plainWords } from './plain-words.ts';
import { preambleConstants } from './preamble.ts';
import { understandHead } from './understand-head.ts';
import type { Vocabulary } from './vocabulary.ts';

/** What a line is that could not be read as a reading. Only 'reading' is one, with a fault; it is set aside. */
export type LineKind = 'blank' | 'head' | 'preamble' | 'summary' | 'footer' | 'reading';

const SUMMARY =
  /^(?:mean|average|avg|min|minimum|max|maximum|median|std|sd|stdev|sum|total|grand total|sub total|subtotal|count|gesamt|mittelwert|mittel|durchschnitt|summe|anzahl|moyenne|mediane|ecart type|total general|media|promedio|desviacion|totale|mediana|gemiddelde|totaal)\b/;
const CLOSING =
  /^(?:signature|signed|sign|page|end of|printed|exported|report|unterschrift|seite|gedruckt|ende|fin de|imprime|firma|pagina|impreso|stampato|firmato|handtekening|bladzijde|einde)\b/;

/**
 * What a line is that did not read as a reading. In doubt it is one: a damaged reading must not vanish from the account.
 */
export function classifyLine(record: readonly string[], plan: FilePlan, vocabulary: Vocabulary): LineKind {
  const filled = record.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length === 0) return 'blank';
  // A block of names none of which is used is the beginning or the end of a printout.
  if (plan.blocks)
    return plan.columns.some(({ field, index }) => field !== '' && (record[index] ?? '') !== '')
      ? 'reading'
      : 'preamble';
  if (headKind(record, plan, vocabulary) !== '') return 'head';
  if (plan.titles.length > 0 && plan.titles.includes(lettersOf(record))) return 'preamble';
  const words = plainWords(filled[0]);
  const date = plan.columns.find(({ field }) => field === 'taken_at')?.index ?? -1;
  // A day number of a spreadsheet, or parts of a date; "Count,2" is none.
  const dated = /\d\D+\d|\d{5}/.test(record[date] ?? '');
  if (SUMMARY.test(words) && !dated) return 'summary';
  if (filled.every((cell) => /^[-=*#_.+]+$/.test(cell))) return 'footer';
  // Fixed columns cut a sentence into pieces.
  if (plan.dialect.delimiter === 'columns' && !dated && CLOSING.test(plainWords(record.join(' ')))) return 'footer';
  if (filled.length > 2) return 'reading';
  if (filled.length <= 2 && preambleConstants([record], vocabulary, plan.columns).length > 0) return 'preamble';
  const sentence = /[:_]/.test(filled[0]) || words.split(' ').length > 3 || /^[-=*#]{3,}$/.test(filled[0]);
  if (filled.length === 1 && (CLOSING.test(words) || sentence)) return 'footer';
  return filled.length === 2 && (CLOSING.test(words) || /:$/.test(filled[0])) ? 'footer' : 'reading';
}

/** A head line: the table's own again, a line of units, or one of another table; '' where it is none. */
export function headKind(
  record: readonly string[],
  plan: FilePlan,
  vocabulary: Vocabulary,
): '' | 'own' | 'units' | 'other' {
  const isSame = plan.heads.every((head, i) => head.trim() === (record[i] ?? '').trim());
  if (isSame && record.slice(plan.heads.length).every((cell) => cell.trim() === '')) return 'own';
  const filled = record.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length < 2 || filled.some((cell) => /^\d/.test(cell))) return '';
  const units = filled.filter((cell) => findUnit(cell.replace(/^[[(]|[\])]$/g, '')) !== undefined).length;
  if (units >= 2 && units >= 0.8 * filled.length) return 'units';
  const understood = filled.filter((cell) => understandHead(cell, vocabulary) !== undefined).length;
  return understood >= Math.max(3, filled.length / 2) ? 'other' : '';
}
