import * as say from '../messages/judged-working.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import type { JudgedNumber } from '../working/judged-number.ts';
import { plainNumber } from '../working/plain-number.ts';
import type { WorkedNumber } from '../working/worked-number.ts';

export interface JudgedLevel extends JudgedNumber {
  /** Column of the derived numbers that the level is a fit of. */
  readonly column: 'o2_reference_pct' | 'co2_reference_pct';
  readonly level: WorkedNumber;
}

/**
 * The level of a row of the drift table and the limit that it is beyond, or else the nearer one; as what it is beyond by,
 * or, where `asMargin`, as what is left to the limit, which is negative beyond it.
 */
export function judgedLevel(drift: Table, row: number, asMargin = false): JudgedLevel {
  const number = (column: string): number => numbersOf(drift, column)[row];
  const isO2 = textAt(textsOf(drift, 'quantity'), row) === 'o2_pct';
  const gas = isO2 ? 'O2' : 'CO2';
  const [value, lower, upper] = ['level_now', 'lower_limit', 'upper_limit'].map(number);
  const isUpper = Number.isFinite(upper) && !(value - lower < upper - value);
  const isOut = !asMargin && (value > upper || value < lower);
  const level = plainNumber(
    'level_now',
    say.levelNow(gas, number('readings_used')),
    `${gas},now`,
    value,
    '%',
    number('level_now_sd'),
  );
  const limit = isUpper
    ? plainNumber('limit', say.upperLimit(gas), `${gas},upper`, upper, '%')
    : plainNumber('limit', say.lowerLimit(gas), `${gas},lower`, lower, '%');
  const [from, less] = isUpper === isOut ? [level, limit] : [limit, level];
  return {
    title: isOut ? say.beyondLimit(gas) : say.roomToLimit(gas),
    symbol: `Δ${gas}`,
    column: isO2 ? 'o2_reference_pct' : 'co2_reference_pct',
    ...{ level, from, less },
  };
}
