import { REGULATORY_OXYGEN_PCT } from '../../../shared/combustion/oxygen-in-air.ts';
import * as say from '../../../shared/messages/checks.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { median } from '../median.ts';
import { shown } from '../shown.ts';

/** More days than any record spans: keeps the days of two analyzers apart. */
const DAYS = 1_000_000;

/** What an analyzer's readings of one day, and a technician's habits, show. */
export function checkAnalyzers(rows: CheckRows, report: Report): void {
  const analyzer = rows.text('analyzer');
  const days = new Map<number, number[]>();
  for (let row = 0; row < rows.count; row++) {
    if (analyzer.codes[row] < 0) continue;
    const key = analyzer.codes[row] * DAYS + Math.floor(rows.taken[row]);
    const list = days.get(key);
    if (list) list.push(row);
    else days.set(key, [row]);
  }
  const before = lastLeft(rows);
  for (const list of days.values()) {
    checkFloor(rows, list, report);
    checkMinutes(rows, list, report);
    checkLeak(rows, list, before, report);
  }
}

/** Clean burners among three units read below this; a day on which none does is the sensor's. */
const FLOOR_PPM = 10;
const LEAST_OF_DAY = 4;
const LEAST_UNITS = 3;

function checkFloor(rows: CheckRows, list: readonly number[], report: Report): void {
  const co = rows.number('co_ppm');
  const known = list.filter((row) => co[row] >= 0);
  const units = new Set(known.map((row) => rows.units.codes[row]));
  if (known.length < LEAST_OF_DAY || units.size < LEAST_UNITS) return;
  const lowest = known.reduce((least, row) => (co[row] < co[least] ? row : least));
  if (co[lowest] > FLOOR_PPM)
    report({
      check: 'sensor_floor',
      row: lowest,
      columns: ['co_ppm'],
      sentence: () => say.sensorFloor(shown(co[lowest], 0), String(known.length)),
    });
}

function checkMinutes(rows: CheckRows, list: readonly number[], report: Report): void {
  const byMinute = new Map<number, number>();
  for (const row of list) {
    // A day without a clock time says nothing about minutes.
    if (Number.isInteger(rows.taken[row])) continue;
    const minute = Math.round(rows.taken[row] * 1440);
    const other = byMinute.get(minute);
    if (other === undefined) byMinute.set(minute, row);
    else if (rows.units.codes[other] !== rows.units.codes[row])
      report({
        check: 'two_units_one_minute',
        row,
        columns: ['taken_at'],
        sentence: () => say.oneMinute(textAt(rows.units, other)),
      });
  }
}

/** For each reading as found: the unit's last reading as left at that fire and fuel, -1 where there is none. */
function lastLeft(rows: CheckRows): Int32Array {
  const [fire, fuel, state] = ['fire', 'fuel', 'state'].map((name) => rows.text(name));
  const before = new Int32Array(rows.count).fill(-1);
  for (const [from, to] of rows.byUnit) {
    const last = new Map<number, number>();
    for (let row = from; row < to; row++) {
      const key = (fire.codes[row] + 1) * 1000 + fuel.codes[row] + 1;
      if (textAt(state, row) === 'as_found') before[row] = last.get(key) ?? -1;
      if (textAt(state, row) === 'as_left') last.set(key, row);
    }
  }
  return before;
}

/** A leak lifts O2 everywhere and leaves alone what is air-free and what is hot. */
const LEAK_O2_PCT = 1;
const SAME_FLUE_K = 6;

function checkLeak(rows: CheckRows, list: readonly number[], before: Int32Array, report: Report): void {
  const [o2, flue, co] = ['o2_pct', 'flue_C', 'co_ppm'].map((name) => rows.number(name));
  const compared = list.filter((row) => before[row] >= 0 && o2[row] < 18 && !Number.isNaN(o2[before[row]]));
  if (compared.length < 3 || new Set(compared.map((row) => rows.units.codes[row])).size < 2) return;
  const rises = compared.map((row) => o2[row] - o2[before[row]]);
  const sameFlue = compared.every((row) => Math.abs(flue[row] - flue[before[row]]) < SAME_FLUE_K);
  const airFree = (row: number): number => (co[row] * REGULATORY_OXYGEN_PCT) / (REGULATORY_OXYGEN_PCT - o2[row]);
  const sameCo = compared.every((row) => {
    const [now, then] = [airFree(row), airFree(before[row])];
    return Math.abs(now - then) <= Math.max(12, 0.3 * then);
  });
  if (!rises.every((rise) => rise > LEAK_O2_PCT) || !sameFlue || !sameCo) return;
  for (const row of compared)
    report({
      check: 'sample_air_leak',
      row,
      columns: ['o2_pct', 'co2_pct', 'co_ppm'],
      sentence: () => say.sampleLeak(String(compared.length), shown(median(rises))),
    });
}
