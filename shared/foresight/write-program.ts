import { atOnce, type Pieces } from '../pieces.ts';
import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { aimBehind } from './aim-behind.ts';
import { columnStarts, columnsBeforeZones, type FleetProgram, type SharedColumns, STEP } from './fleet-program.ts';
import { type FleetReadings, READING_STATE, readingOf } from './fleet-readings.ts';
import type { LaneSeries } from './lane-series.ts';
import { StepList } from './step-list.ts';
import { UnitColumns } from './unit-columns.ts';
import {
  adjustedAt,
  adjustedUnseen,
  analyzersOfOneVisit,
  copiesFound,
  endOfUnit,
  endOfVisit,
  sameVisit,
} from './visit-rows.ts';
import { type SharedMonths, sharedMonths, zoneMonthOfVisit } from './zone-months.ts';

const UNITS_A_PIECE = 1024;
/** Variance of a recorded adjustment to an unknown aim. */
const UNKNOWN_ADJUSTMENT = 0.6 ** 2;

export interface WrittenProgram {
  readonly program: FleetProgram;
  /** Per reading: 1 where the model takes it. */
  readonly used: Uint8Array;
  /** Per step: the day it belongs to. */
  readonly stepDay: Float64Array;
  readonly series: LaneSeries;
  /** The gas zones' months that stand as the last shared columns. */
  readonly months: SharedMonths;
}

/** Turns readings into the steps that the filter runs. See fleet-program.ts and the reset rules in `writeLane`. */
export class ProgramWriter {
  readonly #readings: FleetReadings;
  readonly #steps = new StepList();
  readonly #used: Uint8Array;
  readonly #stepDay: number[] = [];
  readonly #series: LaneSeries;
  readonly #shared: SharedColumns;
  readonly #singleVisit: Uint8Array;
  readonly #unseen: Uint8Array;
  readonly #months: SharedMonths;
  #zoned: { readonly step: number; readonly column: number }[] = [];
  /** Per fleet lane: whether nothing is known of its level. */
  readonly #fresh: Uint8Array;
  /** Per fleet lane: the last row taken in its series, -1 for none. */
  readonly #lastRow: Int32Array;

  constructor(readings: FleetReadings) {
    this.#readings = readings;
    this.#used = new Uint8Array(readings.rows);
    const { count } = readings.lanes;
    const column = (): Int32Array => new Int32Array(count);
    const [from, to] = [0, 1].map(() => new Float64Array(count).fill(Number.NaN));
    this.#series = { readings: column(), visits: column(), intervals: column(), from, to };
    this.#fresh = new Uint8Array(count).fill(1);
    this.#lastRow = new Int32Array(count).fill(-1);
    this.#singleVisit = analyzersOfOneVisit(readings);
    this.#unseen = adjustedUnseen(readings);
    const { analyzers, laterAnalyzers, classes, fuels } = readings;
    this.#months = sharedMonths(readings);
    const zoneMonths = this.#months.codes.length;
    const cells = { analyzers, secondAnalyzers: analyzers, laterAnalyzers };
    this.#shared = { ...cells, classes, offsets: fuels, aims: 2 * fuels, zoneMonths };
  }

  write(): WrittenProgram {
    return atOnce(this.writing());
  }

  /** The same, by pieces. */
  *writing(): Pieces<WrittenProgram> {
    const { units, lanes, rows, unit } = this.#readings;
    const [unitSteps, unitLanes, unitColumns] = [0, 1, 2].map(() => new Int32Array(units + 1));
    const [laneClass, laneOffset] = [0, 1].map(() => new Int32Array(lanes.count));
    const columns: number[] = [];
    let row = 0;
    for (let u = 0; u < units; u++) {
      if (u % UNITS_A_PIECE === 0) yield;
      unitLanes[u + 1] = unitLanes[u];
      while (unitLanes[u + 1] < lanes.count && lanes.unit[unitLanes[u + 1]] === u) unitLanes[u + 1]++;
      const end = endOfUnit(unit, row, rows, u);
      const own = new UnitColumns();
      for (let lane = unitLanes[u]; lane < unitLanes[u + 1]; lane++)
        laneClass[lane] = own.place(this.#classColumn(lane));
      this.#writeUnit(u, row, end, unitLanes[u], unitLanes[u + 1], own);
      for (let lane = unitLanes[u]; lane < unitLanes[u + 1]; lane++)
        laneOffset[lane] = own.find(this.#offsetColumn(lane));
      this.#placeZones(own);
      for (const column of own.list) columns.push(column);
      unitSteps[u + 1] = this.#steps.length;
      unitColumns[u + 1] = columns.length;
      row = end;
    }
    const program: FleetProgram = {
      ...{ units, unitSteps, unitLanes, unitColumns },
      columns: Int32Array.from(columns),
      laneClass,
      laneOffset,
      shared: this.#shared,
      ...this.#steps.columns(),
    };
    const stepDay = Float64Array.from(this.#stepDay);
    return { program, used: this.#used, stepDay, series: this.#series, months: this.#months };
  }

  #classColumn(lane: number): number {
    return columnStarts(this.#shared).classes + this.#readings.lanes.classOf[lane];
  }

  #offsetColumn(lane: number): number {
    return columnStarts(this.#shared).offsets + this.#readings.lanes.fuel[lane];
  }

  /** What crews leave beyond their aim; -1 where there is no fuel to tell it by. */
  #aimColumn(lane: number, own: UnitColumns): number {
    const { fuel, aimInCo2 } = this.#readings.lanes;
    if (this.#shared.aims === 0) return -1;
    return own.place(columnStarts(this.#shared).aims + 2 * fuel[lane] + aimInCo2[lane]);
  }

  #writeUnit(u: number, from: number, to: number, firstLane: number, endLane: number, own: UnitColumns): void {
    const { day, breaks, visit } = this.#readings;
    const lanes = endLane - firstLane;
    const pending = [...(breaks[u] ?? [])];
    let last = day[from];
    for (let lane = 0; lane < lanes; lane++) this.#add(STEP.renew, lane, last ?? 0);
    for (let start = from; start < to; ) {
      const end = endOfVisit(day, visit, start, to);
      const on = day[start];
      while (pending.length > 0 && pending[0] < Math.floor(on)) {
        pending.shift();
        this.#renew(firstLane, lanes, on);
      }
      this.#beginVisit(start, end, on, (on - last) / DAYS_PER_YEAR);
      const breaksToday = pending.length > 0 && pending[0] <= Math.floor(day[end - 1]);
      if (breaksToday) pending.shift();
      this.#writeVisit(start, end, firstLane, lanes, own, breaksToday);
      last = on;
      start = end;
    }
    if (pending.length > 0) this.#renew(firstLane, lanes, pending[pending.length - 1]);
  }

  #renew(firstLane: number, lanes: number, on: number): void {
    for (let lane = 0; lane < lanes; lane++) {
      this.#add(STEP.renew, lane, on);
      this.#startSeries(firstLane + lane);
    }
  }

  #startSeries(fleetLane: number): void {
    const { readings, visits, intervals, from, to } = this.#series;
    this.#fresh[fleetLane] = 1;
    this.#lastRow[fleetLane] = -1;
    readings[fleetLane] = 0;
    visits[fleetLane] = 0;
    intervals[fleetLane] = 0;
    from[fleetLane] = Number.NaN;
    to[fleetLane] = Number.NaN;
  }

  #add(kind: number, lane: number, on: number, ...rest: number[]): void {
    this.#steps.add(kind, lane, ...rest);
    this.#stepDay.push(on);
  }

  #beginVisit(start: number, end: number, on: number, years: number): void {
    const { extra, analyzer } = this.#readings;
    let sum = 0;
    let named = false;
    for (let row = start; row < end; row++) {
      sum += Number.isFinite(extra[row]) ? extra[row] : 0;
      named ||= this.#biasOf(analyzer[row]);
    }
    const column = this.#months.column[zoneMonthOfVisit(this.#readings, start, end)] ?? -1;
    if (column >= 0) this.#zoned.push({ step: this.#steps.length, column });
    this.#add(STEP.visit, 0, on, Math.max(0, years), sum / (end - start), named ? 0 : 1);
  }

  /** After the unit's other columns, so that a filter without zones need not carry them along. */
  #placeZones(own: UnitColumns): void {
    const first = columnsBeforeZones(this.#shared);
    for (const { step, column } of this.#zoned) this.#steps.biasColumn[step] = own.place(first + column);
    this.#zoned = [];
  }

  /** Whether an analyzer's bias is a column; one seen at a single visit belongs to that visit's own effect. */
  #biasOf(analyzer: number): boolean {
    return analyzer >= 0 && this.#singleVisit[analyzer] === 0;
  }

  #writeVisit(start: number, end: number, firstLane: number, lanes: number, own: UnitColumns, breaks: boolean): void {
    const rowsOf: number[][] = Array.from({ length: lanes }, () => []);
    for (let row = start; row < end; row++) rowsOf[this.#readings.lane[row] - firstLane].push(row);
    rowsOf.forEach((rows, lane) => {
      if (rows.length > 0) this.#writeFound(rows, lane, firstLane + lane, own);
    });
    if (breaks) this.#renew(firstLane, lanes, this.#readings.day[start]);
    rowsOf.forEach((rows, lane) => {
      if (rows.length > 0) this.#writeLeft(rows, lane, firstLane + lane, own, breaks);
    });
  }

  /** As-found readings; readings of unknown state where the visit has no other: a level anew where they may follow an adjustment. */
  #writeFound(rows: readonly number[], lane: number, fleetLane: number, own: UnitColumns): void {
    const { state, sudden } = this.#readings;
    const found = this.#of(rows, READING_STATE.found);
    if (found.some((row) => sudden?.[row] === 1)) this.#fresh[fleetLane] = 1;
    for (const row of found) this.#reading(row, lane, fleetLane, own);
    const unknown = this.#of(rows, READING_STATE.unknown);
    if (unknown.length === 0 || rows.some((row) => state[row] <= READING_STATE.left)) return;
    if (this.#unseen[fleetLane] === 1) this.#fresh[fleetLane] = 1;
    for (const row of unknown) this.#reading(row, lane, fleetLane, own);
  }

  /**
   * As-left readings. Adjusted, or not known but left unlike found: the level starts anew from the as-left reading.
   * Not adjusted: one more reading of the same level, unless it is a copy. No as-left reading after a visit that may have
   * adjusted: the level is as found, less surely.
   */
  #writeLeft(rows: readonly number[], lane: number, fleetLane: number, own: UnitColumns, breaks: boolean): void {
    const left = this.#of(rows, READING_STATE.left);
    const found = this.#of(rows, READING_STATE.found);
    const adjusted = adjustedAt(this.#readings, rows);
    if (left.length === 0) {
      if (found.length > 0 && adjusted !== 0 && !breaks)
        this.#writeUnrecorded(found, lane, fleetLane, adjusted === 1, own);
      return;
    }
    const copied = adjusted !== 1 && found.length > 0 && left.every((row) => copiesFound(this.#readings, row, found));
    if (copied && !breaks) return;
    const anew = adjusted !== 0 && this.#fresh[fleetLane] === 0;
    if (anew || (found.length === 0 && this.#unseen[fleetLane] === 1)) this.#fresh[fleetLane] = 1;
    for (const row of left) this.#reading(row, lane, fleetLane, own, anew || breaks ? STEP.left : STEP.set);
  }

  /**
   * No as-left reading at a visit that adjusted or may have: toward the aim where the adjustment is recorded or the burner
   * was found outside its tolerance, else the level as found, less surely.
   */
  #writeUnrecorded(
    found: readonly number[],
    lane: number,
    fleetLane: number,
    recorded: boolean,
    own: UnitColumns,
  ): void {
    const { aim, tolerance, analyzer, day } = this.#readings;
    const row = found[found.length - 1];
    const value = readingOf(this.#readings, row);
    const bias = this.#biasOf(analyzer[row]) ? own.place(analyzer[row]) : -1;
    if (!Number.isFinite(aim[row])) this.#add(STEP.widen, lane, day[row], 0, recorded ? UNKNOWN_ADJUSTMENT : 0);
    else if (recorded || Math.abs(value - aim[row]) > tolerance[row])
      this.#add(STEP.aim, lane, day[row], aim[row], recorded ? 1 : 0, 0, bias, this.#aimColumn(fleetLane, own));
    else this.#add(STEP.widen, lane, day[row]);
  }

  /** Rows of a state that hold a number. */
  #of(rows: readonly number[], wanted: number): number[] {
    const { state, first, second } = this.#readings;
    return rows.filter((row) => state[row] === wanted && (Number.isFinite(first[row]) || Number.isFinite(second[row])));
  }

  #reading(row: number, lane: number, fleetLane: number, own: UnitColumns, fresh: number = STEP.set): void {
    const { first, second, analyzer, analyzers, day } = this.#readings;
    const named = this.#biasOf(analyzer[row]);
    let isSecond = false;
    for (const [cell, value] of [first[row], second[row]].entries()) {
      if (!Number.isFinite(value)) continue;
      const kind = this.#fresh[fleetLane] === 1 ? fresh : STEP.read;
      const extra = kind === STEP.left ? aimBehind(this.#readings, row, value) : Number(isSecond);
      const bias = named ? own.place(analyzer[row] + cell * analyzers) : -1;
      const aimed = kind === STEP.left && !Number.isNaN(extra);
      const offset =
        cell === 1 ? own.place(this.#offsetColumn(fleetLane)) : aimed ? this.#aimColumn(fleetLane, own) : -1;
      this.#add(kind, lane, day[row], value, extra, cell, bias, offset);
      isSecond = true;
      this.#fresh[fleetLane] = 0;
      if (this.#used[row] === 0) this.#count(row, fleetLane, kind === STEP.read);
    }
  }

  #count(row: number, fleetLane: number, read: boolean): void {
    const { readings, visits, intervals, from, to } = this.#series;
    const { day, visit } = this.#readings;
    const last = this.#lastRow[fleetLane];
    this.#used[row] = 1;
    readings[fleetLane]++;
    if (readings[fleetLane] === 1) from[fleetLane] = day[row];
    if (last < 0 || !sameVisit(day, visit, last, row)) visits[fleetLane]++;
    if (read && last >= 0 && Math.floor(day[row]) > Math.floor(day[last])) intervals[fleetLane]++;
    to[fleetLane] = day[row];
    this.#lastRow[fleetLane] = row;
  }
}
