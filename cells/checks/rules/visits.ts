import * as say from '../../../shared/messages/checks.ts';
import { writeIsoDate } from '../../../shared/quantities/dates.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
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
  const [fire, state, fuel] = ['fire', 'state', 'fuel'].map((name) => rows.text(name));
  const [o2, flue] = ['o2_pct', 'flue_C'].map((name) => rows.number(name));
  for (let left = from; left < to; left++) {
    if (textAt(state, left) !== 'as_left') continue;
    for (let found = from; found < to; found++) {
      if (
        textAt(state, found) !== 'as_found' ||
        fire.codes[found] !== fire.codes[left] ||
        fuel.codes[found] !== fuel.codes[left]
      )
        continue;
      if (rows.taken[left] < rows.taken[found])
        report(
          'left_before_found',
          left,
          ['taken_at', 'state'],
          say.leftBeforeFound(writeIsoDate(rows.taken[left]), writeIsoDate(rows.taken[found])),
        );
      const equal = COMPARED.filter((name) => rows.number(name)[left] === rows.number(name)[found]);
      const differ = COMPARED.some((name) => {
        const [a, b] = [rows.number(name)[left], rows.number(name)[found]];
        return a !== b && !(Number.isNaN(a) && Number.isNaN(b));
      });
      if (equal.length >= LEAST_EQUAL && !differ)
        report('as_left_copied', left, equal, say.asLeftCopied(equal.join(', ')));
      const colder = flue[left] - flue[found];
      if (colder > COLD_K && Math.abs(o2[left] - o2[found]) < SAME_O2_PCT)
        report('cold_start', found, ['flue_C'], say.coldStart(shown(flue[found], 0), shown(flue[left], 0)));
      break;
    }
  }
}

/** Of the four signs of high fire, two or more the wrong way round, and no more the right way. */
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
      if (wrong.length >= 2 && wrong.length > right.length) {
        const text = wrong.map(({ name }) => name).join(', ');
        for (const row of [high, low]) report('fires_swapped', row, ['fire'], say.firesSwapped(text));
      }
      break;
    }
  }
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
