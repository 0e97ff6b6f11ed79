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
import { type TableRecord, tableOfRecords } from './table-of-records.ts';

const NINETY_FIVE = normalQuantile(0.975);
const MONTH = DAYS_PER_YEAR / 12;

export function tableOfDrift(rows: readonly DriftRow[], fitted: FittedDrift, derived: Table): Table {
  const last = lastAsMeasured(fitted, derived);
  return tableOfRecords(
    driftSchema,
    rows.map((row) => ({ ...identity(row), ...fitOf(row, fitted), ...verdictOfRow(row), last_as_measured: last(row) })),
  );
}

const identity = ({ unit, fuel, fire, band }: DriftRow): TableRecord => ({
  unit,
  fuel,
  fire,
  quantity: band.quantity,
  target_pct: band.target,
  setting_lower_pct: band.settingLower,
  setting_upper_pct: band.settingUpper,
  band_source: band.source,
  lower_limit: band.lower,
  upper_limit: band.upper,
});

function fitOf(row: DriftRow, { series, states }: FittedDrift): TableRecord {
  const { lane } = row;
  if (lane < 0) return { readings_used: 0, visits_used: 0 };
  return {
    readings_used: series.readings[lane],
    visits_used: series.visits[lane],
    slope_per_year: row.state.rate,
    slope_lower: row.slopeLower,
    slope_upper: row.slopeUpper,
    slope_source: row.slopeSource,
    last_visit_on: Math.floor(series.to[lane]),
    series_from: Math.floor(series.from[lane]),
    level_left: row.state.level,
    own_weight: series.readings[lane] > 0 ? states.ownWeight[lane] : Number.NaN,
  };
}

const verdictOfRow = ({ judged, horizon }: DriftRow): TableRecord => ({
  level_now: judged.levelNow,
  level_now_sd: judged.levelNowSd,
  margin_now: judged.marginNow,
  margin_left: judged.marginLeft,
  horizon_on: horizon,
  probability_out_by_horizon: judged.outBy,
  probability_outside_at_horizon: judged.outsideAt,
  leaves_on_10: judged.leavesOn[0],
  leaves_on_50: judged.leavesOn[1],
  leaves_on_90: judged.leavesOn[2],
  reason: judged.reason,
});

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
      ['state', takeRows(state, source)],
      ['used', used],
    ]),
  );
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
    const scale = row.band.quantity === 'co2_pct' ? Math.abs(co2PerO2(lanes[row.lane])) : 1;
    for (let i = trace.starts[row.lane]; i < trace.starts[row.lane + 1]; i++)
      add(trace.day[i], row.fromO2(trace.level[i]), trace.sd[i] * scale);
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
