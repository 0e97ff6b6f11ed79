import * as say from '../../../shared/messages/checks.ts';
import { dayOf, writeDay } from '../../../shared/quantities/dates.ts';
import { twelveDigits } from '../../../shared/quantities/twelve-digits.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Repair, Report } from '../finding.ts';
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
      for (const name of PRESSURES) checkPressure(rows, list, name, report);
    }
  }
  checkClock(rows, report);
}

const LEAST_OTHERS = 4;
const SCALED = ['flue_C', 'air_C'] as const;

/** °F taken for °C, or °C for °F: the reading lies where the unit's median would lie on the other scale. */
function checkScale(rows: CheckRows, list: readonly number[], report: Report): void {
  const flue = rows.number('flue_C');
  if (list.length <= LEAST_OTHERS) return;
  const usual = median(list.map((row) => flue[row]));
  if (!(usual > 40)) return;
  for (const row of list) {
    const onOther = otherScale(flue[row], flue[row] > usual);
    const apart = Math.abs(flue[row] - usual);
    if (!(apart > 40 && Math.abs(onOther - usual) < Math.min(12, 0.2 * apart))) continue;
    const witness = airIsOff(rows, list, row, flue[row] > usual);
    report({
      check: 'fahrenheit_for_celsius',
      row,
      columns: SCALED,
      sentence: () => say.scale(shown(flue[row], 0), shown(usual, 0), shown(onOther, 0), witness),
      // Without a second witness nobody should be led to change a value.
      ...(witness && { repair: () => rescaled(rows, row, flue[row] > usual) }),
    });
  }
}

const otherScale = (value: number, isFahrenheit: boolean): number =>
  isFahrenheit ? (value - 32) / 1.8 : value * 1.8 + 32;

/** Whether the air temperature of the row is off by the same scale as its flue temperature. */
function airIsOff(rows: CheckRows, list: readonly number[], row: number, isFahrenheit: boolean): boolean {
  const air = rows.number('air_C');
  const usual = median(list.filter((other) => other !== row).map((other) => air[other]));
  const onOther = otherScale(air[row], isFahrenheit);
  return Math.abs(onOther - usual) < 15 && Math.abs(air[row] - usual) > 2 * Math.abs(onOther - usual) + 10;
}

function rescaled(rows: CheckRows, row: number, isFahrenheit: boolean): Repair {
  const key = rows.key(row);
  return {
    words: say.rescale(isFahrenheit),
    corrections: SCALED.map((column) => ({
      action: 'change' as const,
      row: key,
      column,
      value: twelveDigits(Math.round(otherScale(rows.number(column)[row], isFahrenheit) * 10) / 10),
    })),
  };
}

const PRESSURES = ['supply_running_Pa', 'supply_static_Pa', 'manifold_Pa'] as const;
/** Ratios of the units that gas pressure is read in: in. w.c., mbar, kPa, psi, Pa. */
const FACTORS = [2.4908891, 10, 27.68, 100, 249.08891];

/** A pressure off by the ratio of two units, from the unit's history or, where there is none, from its rating plate. */
function checkPressure(
  rows: CheckRows,
  list: readonly number[],
  name: (typeof PRESSURES)[number],
  report: Report,
): void {
  const values = rows.number(name);
  const known = list.filter((row) => values[row] > 0);
  if (known.length === 0) return;
  const [lower, upper] = name === 'manifold_Pa' ? [Number.NaN, Number.NaN] : rows.plate(known[0]);
  const long = known.length > LEAST_OTHERS;
  const usual = long ? median(known.map((row) => values[row])) : (lower + upper) / 2;
  for (const row of known) {
    const isHigh = values[row] > usual;
    const ratio = isHigh ? values[row] / usual : usual / values[row];
    const factor = FACTORS.find((candidate) =>
      long
        ? Math.abs(ratio / candidate - 1) < 0.1
        : isWithin(isHigh ? values[row] / candidate : values[row] * candidate, lower, upper) &&
          !isWithin(values[row], 0.5 * lower, 2 * upper),
    );
    if (factor === undefined) continue;
    const put = isHigh ? values[row] / factor : values[row] * factor;
    report({
      check: 'pressure_unit',
      row,
      columns: [name],
      sentence: () =>
        long
          ? say.pressureUnit(name, shown(values[row], 0), shown(usual, 0), shown(factor, 2))
          : say.pressureOffPlate(name, shown(values[row], 0), shown(lower, 0), shown(upper, 0), shown(factor, 2)),
      repair: () => ({
        words: say.changeValue(name, shown(values[row], 0), shown(put, 0)),
        corrections: [{ action: 'change', row: rows.key(row), column: name, value: twelveDigits(Math.round(put)) }],
      }),
    });
  }
}

const isWithin = (value: number, lower: number, upper: number): boolean => value >= lower && value <= upper;

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
    if (what !== '')
      report({
        check: 'clock_wrong',
        row,
        columns: ['taken_at'],
        sentence: () => say.clockBefore(writeDay(day), what),
      });
  }
}

/** Units with readings of several days before they were installed: these are of the one that stood there before. */
function replacedUnits(rows: CheckRows): ReadonlySet<number> {
  const replaced = new Set<number>();
  for (const [from, to] of rows.byUnit) {
    const days = new Set<number>();
    for (let row = from; row < to && days.size <= 2; row++)
      if (rows.taken[row] < rows.installedOn(row)) days.add(Math.floor(rows.taken[row]));
    if (days.size > 2) replaced.add(rows.units.codes[from]);
  }
  return replaced;
}
