import type { ShownColumn } from '../../shared/cell.ts';
import { writeIsoDate } from '../../shared/quantities/dates.ts';
import { groupedDigits } from '../../shared/quantities/grouped-digits.ts';
import type { Column } from '../../shared/table/table.ts';

/** Columns that hold the project's own code words; people read them with spaces. All other text stays as written. */
const CODE_WORDS = new Set([
  'action',
  'adjusted',
  'air_source',
  'burner',
  'column',
  'distinguishable',
  'event',
  'fire',
  'firing',
  'flags',
  'co2_from',
  'o2_from',
  'counterfactual',
  'fuel',
  'fuel_air_control',
  'fuel_use_source',
  'quantity',
  'reason',
  'service',
  'slope_source',
  'state',
  'status',
  'tier',
  'verdict',
  'visit_reason',
]);

const FIGURE_SPACE = '\u2007';
/** Stands where a value is unknown: never blank, never 0. */
export const UNKNOWN_MARK = '–';

/** Code words as people read them: "out_of_tolerance" is "out of tolerance". */
export function plainWords(code: string): string {
  return code
    .replace(/\bco2_pct\b/g, 'CO2 %')
    .replace(/\bo2_pct\b/g, 'O2 %')
    .replaceAll('_', ' ');
}

/** Thousands in narrow spaces from 10 000 on, so that the eye keeps its place; the sign is a true minus. */
export function spacedNumber(value: number, digits: number): string {
  const [whole, fraction] = Math.abs(value).toFixed(digits).split('.');
  const sign = value < 0 && Number(value.toFixed(digits)) !== 0 ? '−' : '';
  return `${sign}${groupedDigits(whole)}${fraction === undefined ? '' : `.${fraction}`}`;
}

/** Four significant digits where a column names no digits, padded so that the decimal marks stand in one line. */
function looseNumber(value: number): string {
  const digits = value === 0 ? 0 : Math.min(4, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value)))));
  const text = spacedNumber(value, digits);
  const [, fraction = ''] = text.split('.');
  return text + FIGURE_SPACE.repeat(4 - fraction.length + (fraction === '' ? 1 : 0));
}

/** One value as the sheet shows it; '' where it is unknown. */
export function shownValue(shown: ShownColumn, column: Column | undefined, row: number): string {
  if (!column) return '';
  if (column.kind === 'text') {
    const text = column.codes[row] < 0 ? '' : column.levels[column.codes[row]];
    return CODE_WORDS.has(shown.column) ? plainWords(text) : text;
  }
  const value = column.values[row];
  if (!Number.isFinite(value)) return '';
  if (column.kind === 'date') return writeIsoDate(value).replace('T', ' ');
  const bound = column.bounds?.[row] ?? 0;
  const mark = bound > 0 ? '>' : bound < 0 ? '<' : '';
  return mark + (shown.digits === undefined ? looseNumber(value) : spacedNumber(value, shown.digits));
}

/** Text that leaves for a clipboard: what another program could run as a formula gets an apostrophe in front. */
export function safeToPaste(text: string): string {
  const flat = text.replace(/[\t\r\n]+/g, ' ');
  const isNumber = /^[+-]?\d[\d.]*$/.test(flat);
  return /^[=+\-@]/.test(flat) && !isNumber ? `'${flat}` : flat;
}
