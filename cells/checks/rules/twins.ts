import * as say from '../../../shared/messages/checks.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { median } from '../median.ts';

const LEAST_JUMP_PCT = 1;
/** With fewer readings a unit has no past to fit. */
const LEAST_READINGS = 5;
/** Swapping takes away at least this share of both jumps. */
const LEFT_SHARE = 0.3;

/** Two units of one building that jump at one visit, where swapping them takes most of both jumps away. */
export function checkTwins(rows: CheckRows, report: Report): void {
  const o2 = rows.number('o2_pct');
  const usual = usualO2(rows, o2);
  const byVisit = new Map<string, number[]>();
  const [fire, state] = [rows.text('fire').codes, rows.text('state').codes];
  for (let row = 0; row < rows.count; row++) {
    if (!(Math.abs(o2[row] - usual(row, row)) > LEAST_JUMP_PCT)) continue;
    const building = rows.building(row);
    if (building === '') continue;
    const key = `${building}|${Math.floor(rows.taken[row])}|${fire[row]}|${state[row]}`;
    const list = byVisit.get(key);
    if (list) list.push(row);
    else byVisit.set(key, [row]);
  }
  const told = new Set<string>();
  for (const list of byVisit.values())
    for (const [i, a] of list.entries())
      for (const b of list.slice(i + 1)) {
        if (rows.units.codes[a] === rows.units.codes[b]) continue;
        const asIs = Math.abs(o2[a] - usual(a, a)) + Math.abs(o2[b] - usual(b, b));
        const swapped = Math.abs(o2[a] - usual(b, a)) + Math.abs(o2[b] - usual(a, b));
        if (swapped < LEFT_SHARE * asIs) tellPair(rows, a, b, told, report);
      }
}

/** Both rows are told; the visit's swap is proposed once, whatever number of fires shows it. */
function tellPair(rows: CheckRows, a: number, b: number, told: Set<string>, report: Report): void {
  const [one, other] = [a, b].map((row) => textAt(rows.units, row));
  const visitedOn = writeDay(rows.taken[a]);
  const isFirst = !told.has(`${one}|${other}|${visitedOn}`);
  told.add(`${one}|${other}|${visitedOn}`);
  const said = { check: 'twins_swapped', columns: ['unit'] } as const;
  report({
    ...said,
    row: a,
    sentence: () => say.twinsSwapped(one, other),
    ...(isFirst && {
      repair: () => ({
        words: say.swapUnits(one, other, visitedOn),
        corrections: [{ action: 'swap_units' as const, units: [one, other] as const, visited_on: visitedOn }],
      }),
    }),
  });
  report({ ...said, row: b, sentence: () => say.twinsSwapped(other, one) });
}

/** Median O2 of a row's unit at the fire of another row; NaN where there are too few readings. */
function usualO2(rows: CheckRows, o2: Float64Array): (unitOf: number, fireOf: number) => number {
  const fire = rows.text('fire');
  const fires = fire.levels.length + 1;
  const medians = new Float64Array(rows.units.levels.length * fires).fill(Number.NaN);
  for (const [from, to] of rows.byUnit) {
    const lists: number[][] = Array.from({ length: fires }, () => []);
    for (let row = from; row < to; row++) lists[fire.codes[row] + 1].push(o2[row]);
    for (const [code, list] of lists.entries())
      if (list.length >= LEAST_READINGS) medians[rows.units.codes[from] * fires + code] = median(list);
  }
  return (unitOf, fireOf) => medians[rows.units.codes[unitOf] * fires + fire.codes[fireOf] + 1];
}
