import type { Blank } from '../../../shared/cell.ts';
import { notANumber, numberNeeded, numberOutside } from '../../../shared/messages/page.ts';
import { fail, type Outcome, succeed } from '../../../shared/outcome.ts';

/** Reads what was typed into a blank; an empty optional number is null. A decimal comma is taken as a point. */
export function readEntry(blank: Blank, called: string, typed: string): Outcome<unknown> {
  const { entry } = blank;
  if (entry.kind !== 'number') return succeed(typed);
  const text = typed
    .trim()
    .replace(/[\s\u202f]/g, '')
    .replace('−', '-');
  if (text === '') return entry.optional ? succeed(null) : fail(numberNeeded(called));
  const plain = /^[+-]?\d+,\d+$/.test(text) ? text.replace(',', '.') : text;
  const withoutUnit = entry.unit !== '' && plain.endsWith(entry.unit) ? plain.slice(0, -entry.unit.length) : plain;
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(withoutUnit) ? Number(withoutUnit) : Number.NaN;
  if (!Number.isFinite(value)) return fail(notANumber(called, typed));
  const { minimum, maximum, unit } = entry;
  if ((minimum !== undefined && value < minimum) || (maximum !== undefined && value > maximum))
    return fail(
      numberOutside(
        called,
        value,
        minimum === undefined ? '' : String(minimum),
        maximum === undefined ? '' : String(maximum),
        unit,
      ),
    );
  return succeed(value);
}
