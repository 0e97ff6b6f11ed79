import * as say from '../../../shared/messages/checks.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { shown } from '../shown.ts';

const HABIT_READINGS = 20;
const HABIT_SHARE = 0.8;
/** Days over which a CO that never moves is no measurement. */
const SAME_CO_DAYS = 700;

/** What a technician's readings show in the long run: values written from memory leave traces. */
export function checkHabits(rows: CheckRows, report: Report): void {
  checkHalves(rows, report);
  checkSameCo(rows, report);
}

/** Two last digits of ten come up in one reading of five by chance. */
function checkHalves(rows: CheckRows, report: Report): void {
  const technician = rows.text('technician');
  const o2 = rows.number('o2_pct');
  const seen = new Map<number, { all: number; halves: number; last: number }>();
  for (let row = 0; row < rows.count; row++) {
    if (technician.codes[row] < 0 || !(o2[row] > 0)) continue;
    const entry = seen.get(technician.codes[row]) ?? { all: 0, halves: 0, last: row };
    entry.all++;
    if (Math.abs(o2[row] * 2 - Math.round(o2[row] * 2)) < 1e-9) entry.halves++;
    entry.last = row;
    seen.set(technician.codes[row], entry);
  }
  for (const { all, halves, last } of seen.values())
    if (all >= HABIT_READINGS && halves > HABIT_SHARE * all)
      report({
        check: 'rounded_values',
        row: last,
        columns: ['o2_pct'],
        sentence: () => say.rounded(shown((100 * halves) / all, 0), String(all)),
      });
}

/** A unit's CO that is one number over years, with an O2 that moves. */
function checkSameCo(rows: CheckRows, report: Report): void {
  const [co, o2] = ['co_ppm', 'o2_pct'].map((name) => rows.number(name));
  for (const [from, to] of rows.byUnit) {
    let [first, last, known] = [-1, -1, 0];
    let [same, moves] = [true, false];
    for (let row = from; row < to && same; row++) {
      if (!(co[row] >= 0)) continue;
      if (first < 0) first = row;
      same = co[row] === co[first];
      moves ||= Math.abs(o2[row] - o2[first]) > 0.5;
      last = row;
      known++;
    }
    if (!same || !moves || known < HABIT_READINGS || rows.taken[last] - rows.taken[first] < SAME_CO_DAYS) continue;
    const text = shown(co[first], 0);
    report({
      check: 'co_never_moves',
      row: last,
      columns: ['co_ppm'],
      sentence: () => say.sameCo(text, String(known), shown((rows.taken[last] - rows.taken[first]) / 365.25, 0)),
    });
  }
}
