import { notAText, notFinite } from '../messages/foresight.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';

/** A parameter's allowed range and what people call it. */
export interface FieldRange {
  readonly title: string;
  readonly from: number;
  readonly to: number;
}

/**
 * Parameters completed from their defaults: only names that the defaults have are read, each must be of its default's
 * type (text from a page's choice is understood as a number or a yes or no), numbers must lie in their range.
 */
export function readFields<Fields extends object>(
  cell: string,
  defaults: Fields,
  raw: unknown,
  ranges: Partial<Record<keyof Fields, FieldRange>>,
): Outcome<Fields> {
  const given = (typeof raw === 'object' && raw !== null ? raw : {}) as Partial<Record<string, unknown>>;
  const fields: Record<string, unknown> = {};
  for (const [name, fallback] of Object.entries(defaults) as [keyof Fields & string, unknown][]) {
    const value = Object.hasOwn(given, name) ? given[name] : fallback;
    if (typeof fallback === 'number') {
      const { title, from, to } = ranges[name] ?? { title: name, from: -1e6, to: 1e6 };
      const number = typeof value === 'string' && value.trim() !== '' ? Number(value) : value;
      if (typeof number !== 'number' || !(number >= from && number <= to))
        return fail(notFinite(cell, title, from, to, shown(value)));
      fields[name] = number;
    } else if (typeof fallback === 'boolean') {
      fields[name] = value === true || value === 'true';
    } else if (typeof fallback === 'string') {
      if (typeof value !== 'string') return fail(notAText(cell, name, shown(value)));
      fields[name] = value;
    } else {
      fields[name] = value;
    }
  }
  return succeed(fields as Fields);
}

const shown = (value: unknown): string =>
  typeof value === 'number' || typeof value === 'string'
    ? String(value)
    : (JSON.stringify(value) ?? 'nothing').slice(0, 60);
