import { medianOf } from '../statistics/median-of.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { co2AsO2 } from './co2-line.ts';
import { rowsByValidity } from './lane-keys.ts';
import { sameFire } from './lane-limits.ts';
import type { LaneName } from './lane-name.ts';

/** What a technician sets to from a day on, as the instrument shows it, in O2 points. */
export interface LaneTarget {
  readonly from: number;
  readonly o2: number;
  readonly tolerance: number;
  /** Whether it is written in CO2. */
  readonly inCo2: boolean;
}

/** Tolerance of a target that comes without one. */
export const USUAL_TOLERANCE_O2 = 0.5;
/** Readings from which a target is inferred where the register has none. */
const ENOUGH = 3;

/** Targets of a lane in order of validity, from the register. CO2 targets are told along the fuel's line. */
export function targetsOfLanes(
  limits: Table | undefined,
  lanes: readonly LaneName[],
  co2maxOf: (lane: number) => number,
): LaneTarget[][] {
  const targets: LaneTarget[][] = lanes.map(() => []);
  if (!limits) return targets;
  const rowsOf = rowsByUnit(limits);
  const [fuel, fire, quantity] = ['fuel', 'fire', 'quantity'].map((name) => textsOf(limits, name));
  const [from, target, lower, upper] = ['valid_from', 'target_pct', 'setting_lower_pct', 'setting_upper_pct'].map(
    (name) => numbersOf(limits, name),
  );
  lanes.forEach((lane, i) => {
    for (const row of rowsOf.get(lane.unit) ?? []) {
      const ofFuel = ['', lane.fuel].includes(textAt(fuel, row));
      if (!ofFuel || !sameFire(textAt(fire, row), lane.fire) || !Number.isFinite(target[row])) continue;
      const co2max = co2maxOf(i);
      const inCo2 = textAt(quantity, row) === 'co2_pct';
      const half = (upper[row] - lower[row]) / 2;
      const tolerance = Number.isFinite(half) ? half * (inCo2 ? 20.95 / co2max : 1) : USUAL_TOLERANCE_O2;
      const start = Number.isFinite(from[row]) ? from[row] : Number.NEGATIVE_INFINITY;
      targets[i].push({ from: start, o2: inCo2 ? co2AsO2(target[row], co2max) : target[row], tolerance, inCo2 });
    }
  });
  return targets;
}

function rowsByUnit(limits: Table): Map<string, number[]> {
  const unit = textsOf(limits, 'unit');
  const rows = new Map<string, number[]>();
  for (const row of rowsByValidity(limits)) {
    const name = textAt(unit, row);
    const known = rows.get(name);
    if (known) known.push(row);
    else rows.set(name, [row]);
  }
  return rows;
}

/** The last target valid on a day; undefined before the first. */
export function targetOn(targets: readonly LaneTarget[], day: number): LaneTarget | undefined {
  return targets.findLast(({ from }) => from <= day);
}

/**
 * Where the register has none: what the lane was left at, as shown, by the median of enough as-left readings, else of
 * as-found ones (coarse, but whether it matters is estimated: see `kept` of Spread).
 */
export function targetFromReadings(leftO2: readonly number[], foundO2: readonly number[]): LaneTarget[] {
  const shown = leftO2.length >= ENOUGH ? leftO2 : foundO2.length >= ENOUGH ? foundO2 : [];
  if (shown.length === 0) return [];
  return [{ from: Number.NEGATIVE_INFINITY, o2: medianOf(shown), tolerance: USUAL_TOLERANCE_O2, inCo2: false }];
}
