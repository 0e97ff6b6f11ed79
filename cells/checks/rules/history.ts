import * as say from '../../../shared/messages/checks.ts';
import { dayOf, writeDay } from '../../../shared/quantities/dates.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { median } from '../median.ts';
import { shown } from '../shown.ts';

/** What a reading shows beside the others of its unit at the same fire. */
export function checkHistory(rows: CheckRows, report: Report): void {
  const fire = rows.text('fire');
  for (const [from, to] of rows.byUnit) {
    const byFire = new Map<number, number[]>();
    for (let row = from; row < to; row++) {
      const list = byFire.get(fire.codes[row]);
      if (list) list.push(row);
      else byFire.set(fire.codes[row], [row]);
    }
    for (const list of byFire.values()) {
      checkScale(rows, list, report);
      checkPressure(rows, list, report);
    }
  }
  checkClock(rows, report);
}

const LEAST_OTHERS = 4;

/** °F taken for °C, or °C for °F: the reading lies where the unit's median would lie on the other scale. */
function checkScale(rows: CheckRows, list: readonly number[], report: Report): void {
  const flue = rows.number('flue_C');
  const usual = median(list.map((row) => flue[row]));
  if (list.length <= LEAST_OTHERS || !(usual > 40)) return;
  for (const row of list) {
    const other = flue[row] > usual ? (flue[row] - 32) / 1.8 : flue[row] * 1.8 + 32;
    const apart = Math.abs(flue[row] - usual);
    if (apart > 40 && Math.abs(other - usual) < Math.min(12, 0.2 * apart))
      report(
        'fahrenheit_for_celsius',
        row,
        ['flue_C', 'air_C'],
        say.scale(shown(flue[row], 0), shown(usual, 0), shown(other, 0)),
      );
  }
}

/** Ratios of the units that gas pressure is read in: in. w.c., mbar, kPa, psi, Pa. */
const FACTORS = [2.4908891, 10, 27.68, 100, 249.08891];

function checkPressure(rows: CheckRows, list: readonly number[], report: Report): void {
  for (const name of ['supply_running_Pa', 'supply_static_Pa']) {
    const values = rows.number(name);
    const known = list.filter((row) => values[row] > 0);
    const usual = median(known.map((row) => values[row]));
    if (known.length <= LEAST_OTHERS) continue;
    for (const row of known) {
      const ratio = values[row] > usual ? values[row] / usual : usual / values[row];
      const factor = FACTORS.find((candidate) => Math.abs(ratio / candidate - 1) < 0.1);
      if (factor !== undefined)
        report(
          'pressure_unit',
          row,
          [name],
          say.pressureUnit(shown(values[row], 0), shown(usual, 0), shown(factor, 2)),
        );
    }
  }
}

/** Days that clocks fall back to. */
const FACTORY_DAYS = [dayOf(2000, 1, 1), dayOf(1970, 1, 1), dayOf(1980, 1, 1), dayOf(2010, 1, 1)];

function checkClock(rows: CheckRows, report: Report): void {
  const calibrated = rows.number('calibrated_on');
  const hadPredecessor = replacedUnits(rows);
  for (let row = 0; row < rows.count; row++) {
    const day = Math.floor(rows.taken[row]);
    const what = FACTORY_DAYS.includes(day)
      ? say.factoryDay()
      : day < rows.installedOn(row) && !hadPredecessor.has(rows.units.codes[row])
        ? say.beforeInstalled(writeDay(rows.installedOn(row)))
        : day < calibrated[row]
          ? say.beforeCalibrated(writeDay(calibrated[row]))
          : '';
    if (what !== '') report('clock_wrong', row, ['taken_at'], say.clockBefore(writeDay(day), what));
  }
}

/** Units with readings of several days before they were installed: these are of the one that stood there before. */
function replacedUnits(rows: CheckRows): ReadonlySet<number> {
  const replaced = new Set<number>();
  for (const [from, to] of rows.byUnit) {
    const days = new Set<number>();
    for (let row = from; row < to; row++)
      if (rows.taken[row] < rows.installedOn(row)) days.add(Math.floor(rows.taken[row]));
    if (days.size > 2) replaced.add(rows.units.codes[from]);
  }
  return replaced;
}

const LEAST_JUMP_PCT = 1;

/** Two units of one building that jump at one visit, where swapping them takes most of both jumps away. */
export function checkTwins(rows: CheckRows, report: Report): void {
  const o2 = rows.number('o2_pct');
  const fire = rows.text('fire');
  const usual = usualO2(rows, o2);
  const byDay = new Map<string, number[]>();
  for (let row = 0; row < rows.count; row++) {
    const building = rows.building(row);
    const jump = o2[row] - (usual.get(`${rows.units.codes[row]}|${fire.codes[row]}`) ?? Number.NaN);
    if (building === '' || !(Math.abs(jump) > LEAST_JUMP_PCT)) continue;
    const key = `${building}|${Math.floor(rows.taken[row])}|${fire.codes[row]}|${rows.text('state').codes[row]}`;
    byDay.set(key, [...(byDay.get(key) ?? []), row]);
  }
  for (const list of byDay.values())
    for (const a of list)
      for (const b of list) {
        if (a >= b || rows.units.codes[a] === rows.units.codes[b]) continue;
        const of = (row: number): number => usual.get(`${rows.units.codes[row]}|${fire.codes[row]}`) ?? Number.NaN;
        const asIs = Math.abs(o2[a] - of(a)) + Math.abs(o2[b] - of(b));
        const swapped = Math.abs(o2[a] - of(b)) + Math.abs(o2[b] - of(a));
        if (!(swapped < 0.3 * asIs)) continue;
        for (const [row, other] of [
          [a, b],
          [b, a],
        ])
          report('twins_swapped', row, ['unit'], say.twinsSwapped(textAt(rows.units, row), textAt(rows.units, other)));
      }
}

/** Median O2 of each unit and fire with enough readings. */
function usualO2(rows: CheckRows, o2: Float64Array): ReadonlyMap<string, number> {
  const lists = new Map<string, number[]>();
  const fire = rows.text('fire');
  for (let row = 0; row < rows.count; row++) {
    const key = `${rows.units.codes[row]}|${fire.codes[row]}`;
    const list = lists.get(key);
    if (list) list.push(o2[row]);
    else lists.set(key, [o2[row]]);
  }
  return new Map([...lists].filter(([, list]) => list.length > LEAST_OTHERS).map(([key, list]) => [key, median(list)]));
}
