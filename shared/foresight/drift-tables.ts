import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { driftPathSchema, driftPointsSchema, driftSchema } from '../schemas/drift.ts';
import { normalQuantile } from '../statistics/normal.ts';
import { numberColumn, numbersOf, takeRows, textColumn, textsOf } from '../table/columns.ts';
import { tableOf } from '../table/schema.ts';
import type { Column, Table } from '../table/table.ts';
import { co2PerO2 } from './co2-line.ts';
import type { FittedDrift } from './fitted-drift.ts';
import type { DriftRow } from './judge-drift.ts';
import { levelAt } from './leaving-chance.ts';

const NINETY_FIVE = normalQuantile(0.975);
const MONTH = DAYS_PER_YEAR / 12;

/** One column of the drift table: its value for a judged lane. */
type Pick = (row: DriftRow) => number | string;

export function tableOfDrift(rows: readonly DriftRow[], fitted: FittedDrift, derived: Table): Table {
  const picks: Readonly<Record<string, Pick>> = {
    ...identity,
    ...fitOf(fitted),
    ...verdict,
    last_as_measured: lastAsMeasured(fitted, derived),
  };
  const columns = driftSchema.map(({ name, kind, unit }): [string, Column] => {
    const pick = picks[name];
    if (kind === 'text') return [name, textColumn(rows.map((row) => String(pick(row))))];
    const values = Float64Array.from(rows, (row) => finite(pick(row)));
    return [name, kind === 'date' ? { kind: 'date', values } : numberColumn(unit, values)];
  });
  return tableOf(driftSchema, rows.length, new Map(columns));
}

const finite = (value: number | string): number =>
  typeof value === 'number' && Number.isFinite(value) ? value : Number.NaN;

const identity: Readonly<Record<string, Pick>> = {
  unit: ({ unit }) => unit,
  fuel: ({ fuel }) => fuel,
  fire: ({ fire }) => fire,
  quantity: ({ band }) => band.quantity,
  target_pct: ({ band }) => band.target,
  setting_lower_pct: ({ band }) => band.settingLower,
  setting_upper_pct: ({ band }) => band.settingUpper,
  band_source: ({ band }) => band.source,
  lower_limit: ({ band }) => band.lower,
  upper_limit: ({ band }) => band.upper,
};

/** What the fit says of a lane; nothing but zero readings where it has none. */
function fitOf({ series, states, began }: FittedDrift): Readonly<Record<string, Pick>> {
  const of =
    (values: ArrayLike<number>): Pick =>
    ({ lane }) =>
      lane < 0 ? Number.NaN : values[lane];
  const count =
    (values: ArrayLike<number>): Pick =>
    ({ lane }) =>
      lane < 0 ? 0 : values[lane];
  return {
    readings_used: count(series.readings),
    visits_used: count(series.visits),
    slope_per_year: ({ state }) => state.rate,
    slope_lower: ({ slopeLower }) => slopeLower,
    slope_upper: ({ slopeUpper }) => slopeUpper,
    slope_source: ({ slopeSource }) => slopeSource,
    last_visit_on: of(series.to.map(Math.floor)),
    series_from: of(series.from.map(Math.floor)),
    drift_began_on: of(began.map(Math.floor)),
    level_left: ({ state }) => state.level,
    own_weight: (row) => (row.slopeSource === '' ? Number.NaN : of(states.ownWeight)(row)),
  };
}

const verdict: Readonly<Record<string, Pick>> = {
  level_now: ({ judged }) => judged.levelNow,
  level_now_sd: ({ judged }) => judged.levelNowSd,
  margin_now: ({ judged }) => judged.marginNow,
  margin_left: ({ judged }) => judged.marginLeft,
  horizon_on: ({ horizon }) => horizon,
  probability_out_by_horizon: ({ judged }) => judged.outBy,
  probability_outside_at_horizon: ({ judged }) => judged.outsideAt,
  leaves_on_10: ({ judged }) => judged.leavesOn[0],
  leaves_on_50: ({ judged }) => judged.leavesOn[1],
  leaves_on_90: ({ judged }) => judged.leavesOn[2],
  reason: ({ judged }) => judged.reason,
};

/** The last reading taken of a lane as the instrument showed it, in the lane's quantity. */
function lastAsMeasured({ readings, lanes }: FittedDrift, derived: Table): (row: DriftRow) => number {
  const last = new Int32Array(lanes.length).fill(-1);
  readings.lane.forEach((lane, i) => {
    if (readings.used[i] === 1) last[lane] = readings.sourceRow[i];
  });
  const shown = { o2_pct: numbersOf(derived, 'o2_pct'), co2_pct: numbersOf(derived, 'co2_pct') };
  return ({ lane, band }) => (lane < 0 || last[lane] < 0 ? Number.NaN : shown[band.quantity][last[lane]]);
}

/** Every reading of every judged lane in the lane's quantity, in order of the judged lanes. */
export function tableOfPoints(rows: readonly DriftRow[], fitted: FittedDrift, derived: Table): Table {
  const { readings, referenceAir } = fitted;
  const place = new Int32Array(fitted.lanes.length).fill(-1);
  rows.forEach((row, i) => {
    if (row.lane >= 0) place[row.lane] = i;
  });
  const order = readings.lane
    .map((_, i) => i)
    .sort((a, b) => place[readings.lane[a]] - place[readings.lane[b]] || a - b);
  const shown = { o2_pct: numbersOf(derived, 'o2_pct'), co2_pct: numbersOf(derived, 'co2_pct') };
  const judged = referenceAir
    ? { o2_pct: numbersOf(derived, 'o2_reference_pct'), co2_pct: numbersOf(derived, 'co2_reference_pct') }
    : shown;
  const day = numbersOf(derived, 'taken_at');
  const state = textsOf(derived, 'state');
  const rowOf = Int32Array.from(order, (i) => place[readings.lane[i]]);
  const source = Int32Array.from(order, (i) => readings.sourceRow[i]);
  const numbers = (from: typeof shown): Column =>
    numberColumn(
      '%',
      Float64Array.from(rowOf, (row, i) => from[rows[row].band.quantity][source[i]]),
    );
  const used = { kind: 'text', levels: ['no', 'yes'], codes: Int32Array.from(order, (i) => readings.used[i]) } as const;
  return tableOf(
    driftPointsSchema,
    order.length,
    new Map<string, Column>([
      ...laneColumns(rows, rowOf),
      ['quantity', textOfRows(rows, rowOf, ({ band }) => band.quantity)],
      ['day', { kind: 'date', values: Float64Array.from(source, (row) => day[row]) }],
      ['value', numbers(judged)],
      ['as_measured', numbers(shown)],
      [
        'level',
        numberColumn(
          '%',
          levelsOf(
            rows,
            fitted,
            rowOf,
            source.map((row) => Math.floor(day[row])),
          ),
        ),
      ],
      ['state', takeRows(state, source)],
      ['used', used],
    ]),
  );
}

/** The fitted level on the day of each reading, before any adjustment of that day; NaN where the fit has none. */
function levelsOf(
  rows: readonly DriftRow[],
  { trace }: FittedDrift,
  rowOf: Int32Array,
  days: ArrayLike<number>,
): Float64Array {
  return Float64Array.from(rowOf, (place, i) => {
    const { lane, fromO2 } = rows[place];
    for (let at = trace.starts[lane]; at < trace.starts[lane + 1]; at++)
      if (Math.floor(trace.day[at]) === days[i]) return fromO2(trace.level[at]);
    return Number.NaN;
  });
}

/** The level at each visit, then the projection month by month to the horizon. */
export function tableOfPath(rows: readonly DriftRow[], fitted: FittedDrift): Table {
  const { trace, series, lanes } = fitted;
  const rowOf: number[] = [];
  const days: number[] = [];
  const levels: number[] = [];
  const spreads: number[] = [];
  rows.forEach((row, place) => {
    if (row.lane < 0) return;
    const add = (day: number, level: number, sd: number): void => {
      rowOf.push(place);
      days.push(day);
      levels.push(level);
      spreads.push(sd);
    };
    const inCo2 = row.band.quantity === 'co2_pct';
    const scale = inCo2 ? Math.abs(co2PerO2(lanes[row.lane])) : 1;
    const sds = inCo2 ? trace.sdWithOffset : trace.sd;
    for (let i = trace.starts[row.lane]; i < trace.starts[row.lane + 1]; i++)
      add(trace.day[i], row.fromO2(trace.level[i]), sds[i] * scale);
    project(row, series.to[row.lane], add);
  });
  const side = (deviations: number): Column =>
    numberColumn(
      '%',
      Float64Array.from(levels, (level, i) => level + deviations * spreads[i]),
    );
  return tableOf(
    driftPathSchema,
    rowOf.length,
    new Map<string, Column>([
      ...laneColumns(rows, rowOf),
      ['day', { kind: 'date', values: Float64Array.from(days) }],
      ['level', side(0)],
      ['lower', side(-NINETY_FIVE)],
      ['upper', side(NINETY_FIVE)],
    ]),
  );
}

const laneColumns = (rows: readonly DriftRow[], rowOf: ArrayLike<number>): [string, Column][] => [
  ['unit', textOfRows(rows, rowOf, ({ unit }) => unit)],
  ['fuel', textOfRows(rows, rowOf, ({ fuel }) => fuel)],
  ['fire', textOfRows(rows, rowOf, ({ fire }) => fire)],
];

/** A text of the judged lane that each entry belongs to, looked up once a lane. */
function textOfRows(rows: readonly DriftRow[], rowOf: ArrayLike<number>, pick: (row: DriftRow) => string): Column {
  return takeRows(textColumn(rows.map(pick)), rowOf);
}

function project(row: DriftRow, from: number, add: (day: number, level: number, sd: number) => void): void {
  if (!Number.isFinite(row.judged.levelNow)) return;
  for (let day = from; day < row.horizon + MONTH; day += MONTH) {
    const on = Math.min(day, row.horizon);
    const { mean, sd } = levelAt(row.state, Math.max(0, (on - from) / DAYS_PER_YEAR));
    add(on, mean, sd);
    if (on === row.horizon) break;
  }
}
