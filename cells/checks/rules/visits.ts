import * as say from '../../../shared/messages/checks.ts';
import { writeIsoDate } from '../../../shared/quantities/dates.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Repair, Report } from '../finding.ts';
import { shown } from '../shown.ts';

const COMPARED = ['o2_pct', 'co2_pct', 'co_ppm', 'nox_ppm', 'flue_C', 'supply_running_Pa', 'manifold_Pa'];
/** Equal in so many measured values is no chance. */
const LEAST_EQUAL = 3;
/** 20 °F; a change of O2 that explains no such change of the flue. */
const COLD_K = 11;
const SAME_O2_PCT = 1;

/** What the readings of one visit, a unit and a day, say about one another. */
export function checkVisits(rows: CheckRows, report: Report): void {
  for (const [from, to] of rows.byUnit)
    for (let first = from; first < to; ) {
      let end = first + 1;
      while (end < to && Math.floor(rows.taken[end]) === Math.floor(rows.taken[first])) end++;
      checkStates(rows, first, end, report);
      checkFires(rows, first, end, report);
      first = end;
    }
}

/** Found and left of one fire and fuel. */
function checkStates(rows: CheckRows, from: number, to: number, report: Report): void {
  const [state, adjusted] = ['state', 'adjusted'].map((name) => rows.text(name));
  for (let found = from; found < to; found++) {
    if (textAt(state, found) !== 'as_found') continue;
    const left = leftOf(rows, found, from, to);
    if (left >= 0) checkPair(rows, found, left, report);
    else if (textAt(adjusted, found) === 'yes')
      report({ check: 'as_left_missing', row: found, columns: ['state'], sentence: say.asLeftMissing });
  }
}

/** The first reading as left of the same fire and fuel in the visit, -1 where there is none. */
function leftOf(rows: CheckRows, found: number, from: number, to: number): number {
  const [fire, state, fuel] = ['fire', 'state', 'fuel'].map((name) => rows.text(name));
  for (let left = from; left < to; left++)
    if (
      textAt(state, left) === 'as_left' &&
      fire.codes[found] === fire.codes[left] &&
      fuel.codes[found] === fuel.codes[left]
    )
      return left;
  return -1;
}

function checkPair(rows: CheckRows, found: number, left: number, report: Report): void {
  if (rows.taken[left] < rows.taken[found])
    report({
      check: 'left_before_found',
      row: left,
      columns: ['taken_at', 'state'],
      sentence: () => say.leftBeforeFound(writeIsoDate(rows.taken[left]), writeIsoDate(rows.taken[found])),
      repair: () => exchanged(rows, [found, left], 'state', say.swapStates()),
    });
  const value = (name: string, row: number): number => rows.number(name)[row];
  const equal = COMPARED.filter((name) => value(name, left) === value(name, found));
  const differ = COMPARED.some((name) => {
    const [a, b] = [value(name, left), value(name, found)];
    return a !== b && !(Number.isNaN(a) && Number.isNaN(b));
  });
  if (equal.length >= LEAST_EQUAL && !differ) tellCopied(rows, left, equal, report);
  const [cold, hot] = [value('flue_C', found), value('flue_C', left)];
  if (hot - cold > COLD_K && Math.abs(value('o2_pct', left) - value('o2_pct', found)) < SAME_O2_PCT)
    report({
      check: 'cold_start',
      row: found,
      columns: ['flue_C'],
      sentence: () => say.coldStart(shown(cold, 0), shown(hot, 0)),
    });
}

/** A burner that was not touched may well read the same; one that was adjusted cannot. */
function tellCopied(rows: CheckRows, left: number, equal: readonly string[], report: Report): void {
  if (textAt(rows.text('adjusted'), left) === 'no') return;
  report({
    check: 'as_left_copied',
    row: left,
    columns: equal,
    sentence: () => say.asLeftCopied(equal.join(', ')),
    repair: () => ({ words: say.setAside(), corrections: [{ action: 'set_aside', row: rows.key(left) }] }),
  });
}

/** Of the signs of high fire, two or more the wrong way round, and no more the right way. */
function checkFires(rows: CheckRows, from: number, to: number, report: Report): void {
  const [fire, state, fuel] = ['fire', 'state', 'fuel'].map((name) => rows.text(name));
  for (let high = from; high < to; high++) {
    if (textAt(fire, high) !== 'high') continue;
    for (let low = from; low < to; low++) {
      if (textAt(fire, low) !== 'low' || state.codes[low] !== state.codes[high] || fuel.codes[low] !== fuel.codes[high])
        continue;
      const signs = signsOf(rows, high, low);
      const wrong = signs.filter(({ right }) => right < 0);
      const right = signs.filter((sign) => sign.right > 0);
      if (wrong.length >= 2 && wrong.length > right.length) tellFires(rows, high, low, wrong, report);
      break;
    }
  }
}

function tellFires(
  rows: CheckRows,
  high: number,
  low: number,
  wrong: readonly { readonly name: string }[],
  report: Report,
): void {
  const sentence = (): string => say.firesSwapped(wrong.map(({ name }) => name).join(', '));
  const said = { check: 'fires_swapped', columns: ['fire'], sentence } as const;
  report({ ...said, row: high, repair: () => exchanged(rows, [high, low], 'fire', say.swapFires()) });
  report({ ...said, row: low });
}

/** Two rows that give each other the word of a column. */
function exchanged(rows: CheckRows, [a, b]: readonly [number, number], column: string, words: string): Repair {
  const text = (row: number): string => textAt(rows.text(column), row);
  const change = (row: number, value: string): Repair['corrections'][number] => ({
    action: 'change',
    row: rows.key(row),
    column,
    value,
  });
  return { words, corrections: [change(a, text(b)), change(b, text(a))] };
}

/** right: 1 as high and low fire are, -1 the other way round, 0 too close to call or not known. */
function signsOf(rows: CheckRows, high: number, low: number): { name: string; right: number }[] {
  const compare = (column: string, least: number): number => {
    const values = rows.number(column);
    const gap = values[high] - values[low];
    return gap > least ? 1 : gap < -least ? -1 : 0;
  };
  return [
    { name: 'manifold pressure lower', right: compare('manifold_Pa', 25) },
    { name: 'flue colder', right: compare('flue_C', 8) },
    { name: 'heat input smaller', right: compare('heat_input_clocked_kW', 2) },
    { name: 'supply sagging less', right: -compare('supply_running_Pa', 15) },
    { name: 'firing rate lower', right: compare('firing_rate_pct', 5) },
  ];
}
