import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Fleet } from '../fleet.ts';
import { NEW_BEGINNINGS } from './sign.ts';

/** One visit to one lane: means over its readings; NaN where none was read. */
export interface LaneVisit {
  readonly day: number;
  readonly readings: number;
  readonly flueC: number;
  readonly airC: number;
  readonly returnC: number;
  readonly o2Pct: number;
  /** O2 at reference air, the analyzer's bias taken out, of the first as-found reading and of the last reading of any state. */
  readonly foundO2Pct: number;
  readonly lastO2Pct: number;
}

export interface VisitedLane {
  readonly unit: string;
  readonly fuel: string;
  readonly fire: string;
  /** Oldest first, since the last event that began a new series. */
  readonly visits: readonly LaneVisit[];
}

/** The visits of every unit, fuel and fire, a day's readings being one visit, since its last new beginning. */
export function* visitedLanes(fleet: Fleet, skip: (unit: string) => boolean): Generator<VisitedLane> {
  const { readings } = fleet;
  const [fuel, fire] = [readings.text('fuel'), readings.text('fire')];
  const visitOf = visitReader(fleet);
  for (const [unit, rows] of readings.byUnit) {
    if (skip(unit)) continue;
    const from = lastBeginning(fleet, unit);
    const lanesOfUnit = new Map<string, number[][]>();
    for (const row of [...rows].sort((a, b) => readings.day[a] - readings.day[b] || a - b)) {
      const day = Math.floor(readings.day[row]);
      if (!(day >= from)) continue;
      const name = `${fuel(row)}\u0000${fire(row)}`;
      const visits = lanesOfUnit.get(name);
      const last = visits?.at(-1);
      if (last && Math.floor(readings.day[last[0]]) === day) last.push(row);
      else if (visits) visits.push([row]);
      else lanesOfUnit.set(name, [[row]]);
    }
    for (const visits of lanesOfUnit.values()) {
      const [[first]] = visits;
      yield {
        unit,
        fuel: fuel(first),
        fire: fire(first),
        visits: visits.map((list) => visitOf(Math.floor(readings.day[list[0]]), list)),
      };
    }
  }
}

function lastBeginning({ events, asOf }: Fleet, unit: string): number {
  return (events.get(unit) ?? [])
    .filter(({ day, event }) => day <= asOf && NEW_BEGINNINGS.includes(event))
    .reduce((last, { day }) => Math.max(last, Math.ceil(day)), Number.NEGATIVE_INFINITY);
}

function visitReader(fleet: Fleet): (day: number, rows: readonly number[]) => LaneVisit {
  const { readings } = fleet;
  const [flue, air, back] = ['flue_C', 'air_C', 'water_return_C'].map((name) => readings.number(name));
  const bias = biasOf(fleet);
  const [o2, reference] = ['o2_pct', 'o2_reference_pct'].map((name) =>
    readings.number(name).map((value, row) => value - bias(row)),
  );
  return (day, rows) => ({
    day,
    readings: rows.length,
    flueC: meanOf(flue, rows),
    airC: meanOf(air, rows),
    returnC: meanOf(back, rows),
    o2Pct: meanOf(o2, rows),
    foundO2Pct: reference[rows.find((row) => readings.stage[row] === 0) ?? -1] ?? Number.NaN,
    lastO2Pct: reference[rows.findLast((row) => Number.isFinite(reference[row])) ?? -1] ?? Number.NaN,
  });
}

/** Mean of what is known; NaN of nothing. */
function meanOf(values: Float64Array, rows: readonly number[]): number {
  let [sum, known] = [0, 0];
  for (const row of rows)
    if (Number.isFinite(values[row])) {
      sum += values[row];
      known++;
    }
  return sum / known;
}

/** O2 that the analyzer of a reading read too high on its day, where the instruments cell knows it; the analyzer before the unit. */
function biasOf({ readings, instruments }: Fleet): (row: number) => number {
  if (!instruments) return () => 0;
  const name = textsOf(instruments, 'analyzer');
  const [bias, changedOn, before] = ['o2_bias_pct', 'changed_on', 'o2_bias_before_pct'].map((column) =>
    numbersOf(instruments, column),
  );
  const known = new Map(Array.from(bias, (_, row) => [textAt(name, row), row]));
  const analyzer = readings.text('analyzer');
  return (row) => {
    const of = known.get(analyzer(row)) ?? -1;
    const read = readings.day[row] < changedOn[of] ? before[of] : bias[of];
    return Number.isFinite(read) ? read : 0;
  };
}
