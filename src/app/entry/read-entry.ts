import type { Blank } from '../../../shared/cell.ts';
import { notANumber, numberNeeded, numberOutside } from '../../../shared/messages/page.ts';
import { fail, type Outcome, succeed } from '../../../shared/outcome.ts';
import { twelveDigits } from '../../../shared/quantities/twelve-digits.ts';
import { shownAmount } from '../../../shared/sentence/shown-amount.ts';

/** Reads what was typed into a blank, per cent where its numbers are shown so; an empty optional number is null. A decimal comma is taken as a point. */
export function readEntry({ entry, label: called }: Blank, typed: string): Outcome<unknown> {
  if (entry.kind !== 'number') return succeed(typed);
  const text = typed
    .trim()
    .replace(/[\s\u202f]/g, '')
    .replace('−', '-');
  if (text === '') return entry.optional ? succeed(null) : fail(numberNeeded(called));
  const plain = /^[+-]?\d+,\d+$/.test(text) ? text.replace(',', '.') : text;
  const unitTyped = entry.unit.replace(/\s/g, '');
  const withoutUnit = unitTyped !== '' && plain.endsWith(unitTyped) ? plain.slice(0, -unitTyped.length) : plain;
  const shown = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(withoutUnit) ? Number(withoutUnit) : Number.NaN;
  if (!Number.isFinite(shown)) return fail(notANumber(called, typed));
  const { minimum, maximum, unit, factor = 1 } = entry;
  const value = Number(twelveDigits(shown / factor));
  if ((minimum !== undefined && value < minimum) || (maximum !== undefined && value > maximum))
    return fail(
      numberOutside(
        called,
        shown,
        minimum === undefined ? '' : shownAmount(minimum, factor),
        maximum === undefined ? '' : shownAmount(maximum, factor),
        unit,
      ),
    );
  return succeed(value);
}
