import { power } from '../quantities/elementary.ts';
import { medianOf } from '../statistics/median-of.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { rowsByValidity } from './lane-keys.ts';

export interface SupplyTables {
  readonly readings: Table;
  readonly derived: Table;
  readonly units: Table | undefined;
}

/** A unit's gas supply as read at its highest fire, one entry a visit day, in order of time; pascals, NaN unknown. */
export interface UnitSupply {
  readonly unit: string;
  readonly days: readonly number[];
  /** Static less running, brought to the rated heat input. */
  readonly drop: readonly number[];
  readonly fixed: readonly number[];
  readonly running: readonly number[];
  /** The last static and the last running pressure that were read, as they were read; NaN where none was. */
  readonly lastFixed: number;
  readonly lastRunning: number;
  /** How many of the drops were brought to the rated input. */
  readonly normalized: number;
}

/**
 * Found and left of a visit that differ by no more than this are two readings of one drop and are averaged; where they differ
 * by more, the supply was changed at the visit, and what was left counts. A tenth of an inch of water, in pascals: a gauge
 * read to half of that twice, static and running (common practice, no source).
 */
const SAME_DROP_PA = 25;

/** Clocked input is believed within this range of the rated one. */
const BELIEVED: readonly [number, number] = [0.3, 1.5];

/** Every unit of readings and register, sorted by name. */
export function readSupply(tables: SupplyTables, asOf: number, exponent: number): UnitSupply[] {
  const rowsOf = rowsByUnit(tables, asOf);
  const read = supplyReader(tables, exponent);
  return [...rowsOf.keys()].sort().map((unit) => read(unit, rowsOf.get(unit) ?? []));
}

function rowsByUnit({ derived, units }: SupplyTables, asOf: number): Map<string, number[]> {
  const rowsOf = new Map<string, number[]>();
  if (units) {
    const names = textsOf(units, 'unit');
    for (let row = 0; row < units.rows; row++) rowsOf.set(textAt(names, row), []);
  }
  const unit = textsOf(derived, 'unit');
  const day = numbersOf(derived, 'taken_at');
  for (let row = 0; row < derived.rows; row++) {
    if (!(day[row] < asOf + 1)) continue;
    const name = textAt(unit, row);
    const rows = rowsOf.get(name);
    if (rows) rows.push(row);
    else rowsOf.set(name, [row]);
  }
  return rowsOf;
}

function supplyReader(tables: SupplyTables, exponent: number): (unit: string, rows: number[]) => UnitSupply {
  const { readings, derived } = tables;
  const fire = textsOf(derived, 'fire');
  const state = textsOf(derived, 'state');
  const taken = numbersOf(derived, 'taken_at');
  const drop = numbersOf(derived, 'supply_drop_Pa');
  const fixed = numbersOf(readings, 'supply_static_Pa');
  const running = numbersOf(readings, 'supply_running_Pa');
  const clocked = numbersOf(readings, 'heat_input_clocked_kW');
  const rated = ratedInputs(tables.units);
  const full = (row: number, unit: string): number => {
    const share = clocked[row] / (rated.get(unit) ?? Number.NaN);
    return share >= BELIEVED[0] && share <= BELIEVED[1] ? power(share, -exponent) : Number.NaN;
  };
  return (unit, rows) => {
    const high = highestFire(rows, (row) => textAt(fire, row));
    const byDay = new Map<number, number[]>();
    for (const row of high) byDay.set(Math.floor(taken[row]), [...(byDay.get(Math.floor(taken[row])) ?? []), row]);
    const days = [...byDay.keys()].sort((a, b) => a - b);
    const mean = (day: number, value: (row: number) => number): number => meanKnown((byDay.get(day) ?? []).map(value));
    const factor = (row: number): number => full(row, unit);
    const dropAt = (row: number): number => drop[row] * (Number.isFinite(factor(row)) ? factor(row) : 1);
    const byVisit = days.map((day) => dropOfVisit(byDay.get(day) ?? [], dropAt, (row) => textAt(state, row)));
    const inOrder = days.flatMap((day) => inOrderOfStates(byDay.get(day) ?? [], (row) => textAt(state, row)));
    const last = (values: Float64Array): number => {
      const row = inOrder.findLast((at) => Number.isFinite(values[at]));
      return row === undefined ? Number.NaN : values[row];
    };
    return {
      unit,
      days,
      drop: byVisit,
      fixed: days.map((day) => mean(day, (row) => fixed[row])),
      running: days.map((day) => mean(day, (row) => running[row])),
      lastFixed: last(fixed),
      lastRunning: last(running),
      normalized: high.filter((row) => Number.isFinite(factor(row)) && Number.isFinite(drop[row])).length,
    };
  };
}

/** What a visit left counts; trial settings on the way only where there is nothing else. */
const STATE_ORDER: readonly string[] = ['trial', 'as_found', 'unknown', 'as_left'];

function inOrderOfStates(rows: readonly number[], stateOf: (row: number) => string): readonly number[] {
  const place = (row: number): number => STATE_ORDER.indexOf(stateOf(row));
  return [...rows].sort((a, b) => place(a) - place(b) || a - b);
}

function dropOfVisit(
  rows: readonly number[],
  dropAt: (row: number) => number,
  stateOf: (row: number) => string,
): number {
  const of = (...states: readonly string[]): number =>
    meanKnown(rows.filter((row) => states.includes(stateOf(row))).map(dropAt));
  const [found, left] = [of('as_found', 'unknown'), of('as_left')];
  if (Number.isNaN(found) && Number.isNaN(left)) return of('trial');
  if (Number.isNaN(left)) return found;
  return Math.abs(left - found) <= SAME_DROP_PA ? (left + found) / 2 : left;
}

/** High fire where the unit has one, else its only fire: a drop at low fire says nothing. */
function highestFire(rows: readonly number[], fireOf: (row: number) => string): readonly number[] {
  const high = rows.filter((row) => fireOf(row) === 'high');
  return high.length > 0 ? high : rows.filter((row) => ['single', 'unnamed'].includes(fireOf(row)));
}

function meanKnown(values: readonly number[]): number {
  const known = values.filter(Number.isFinite);
  return known.length === 0 ? Number.NaN : known.reduce((sum, value) => sum + value, 0) / known.length;
}

function ratedInputs(units: Table | undefined): Map<string, number> {
  const rated = new Map<string, number>();
  if (!units) return rated;
  const unit = textsOf(units, 'unit');
  const high = numbersOf(units, 'heat_input_high_kW');
  for (const row of rowsByValidity(units)) if (high[row] > 0) rated.set(textAt(unit, row), high[row]);
  return rated;
}

/** Pascals that stand for one in the model: behind high-pressure service everything is larger in proportion. */
export function scaleOf({ drop }: UnitSupply): number {
  const median = medianOf(drop.filter(Number.isFinite));
  return Number.isFinite(median) ? Math.max(1, Math.abs(median) / 300) : 1;
}
