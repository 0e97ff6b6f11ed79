import { readIsoDate } from '../quantities/dates.ts';
import { readingsSchema } from '../schemas/readings.ts';

/** A value for a column of the readings table: a number with its bound, a date, or a text; unknown is NaN or ''. */
export type CorrectedValue =
  | { readonly kind: 'number'; readonly value: number; readonly bound: -1 | 0 | 1 }
  | { readonly kind: 'date'; readonly value: number }
  | { readonly kind: 'text'; readonly value: string };

/** Where a reading came from is a fact that no correction changes. */
const FIXED = new Set(['source_file', 'source_line']);

const WORDS: Readonly<Record<string, readonly string[]>> = {
  fire: ['high', 'low', 'mid', 'single', 'unnamed'],
  state: ['as_found', 'as_left', 'trial', 'unknown'],
  adjusted: ['yes', 'no', ''],
  returned_to_service: ['yes', 'no', ''],
  co2_from: ['measured', 'calculated', ''],
};

/** Every column that can be corrected. */
export const CORRECTABLE: readonly string[] = readingsSchema.map(({ name }) => name).filter((name) => !FIXED.has(name));

/** The text of a corrected value as its column understands it, undefined where it does not. '' is unknown. */
export function correctedValue(column: string, text: string): CorrectedValue | undefined {
  const known = readingsSchema.find(({ name }) => name === column);
  if (!known || FIXED.has(column)) return undefined;
  if (known.kind === 'number') return readNumber(text.trim());
  if (known.kind === 'date') {
    const value = text === '' ? Number.NaN : readIsoDate(text);
    // A reading without a date has no place in the years.
    return Number.isNaN(value) && (text !== '' || column === 'taken_at') ? undefined : { kind: 'date', value };
  }
  const words = WORDS[column];
  if (words ? !words.includes(text) : column === 'unit' && text.trim() === '') return undefined;
  return { kind: 'text', value: text };
}

function readNumber(text: string): CorrectedValue | undefined {
  if (text === '') return { kind: 'number', value: Number.NaN, bound: 0 };
  const [, mark, digits] = /^([<>]?)\s*(-?\d+(?:\.\d+)?(?:e[-+]?\d+)?)$/i.exec(text) ?? [];
  const value = Number(digits);
  if (digits === undefined || !Number.isFinite(value)) return undefined;
  return { kind: 'number', value, bound: mark === '>' ? 1 : mark === '<' ? -1 : 0 };
}
