import type { CellResult, Inputs } from '../../shared/cell.ts';
import { boundsOf, numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { rowsByKey } from '../../shared/table/rows-by-key.ts';
import type { Table, TextColumn } from '../../shared/table/table.ts';
import { coOfReadings } from './co-of-readings.ts';
import type { RaiseParameters } from './parameters.ts';
import { supplyOfReadings } from './supply-of-readings.ts';

/** Everything the judgement looks at, with the readings grouped by unit. Tables that are not there are undefined. */
export interface Fleet {
  readonly asOf: number;
  readonly readings: FleetReadings;
  readonly units: Table | undefined;
  /** Beside the derived readings: fuels by composition, exponents of air density. */
  readonly fuels: Table | undefined;
  readonly exponents: Table | undefined;
  readonly supplyLimits: Table | undefined;
  readonly economics: Table | undefined;
  readonly planning: Table | undefined;
  readonly drift: Table | undefined;
  readonly points: Table | undefined;
  readonly supply: Table | undefined;
  readonly instruments: Table | undefined;
  /** Events of each unit, oldest first. */
  readonly events: ReadonlyMap<string, readonly UnitEvent[]>;
}

export interface UnitEvent {
  readonly day: number;
  readonly event: string;
}

/** The readings with what was derived from them, a column each; `derived` has the same rows. */
export interface FleetReadings {
  readonly table: Table;
  readonly derived: Table;
  /** Rows of each unit, in the table's order. */
  readonly byUnit: ReadonlyMap<string, readonly number[]>;
  /** The same, apart by fuel and fire. */
  readonly lanesOf: (unit: string) => readonly (readonly number[])[];
  readonly day: Float64Array;
  /** 0 as found, 1 on the way, 2 as left: the order inside one visit. */
  readonly stage: Int8Array;
  text(column: string): (row: number) => string;
  /** Of the derived table, else of the readings. */
  number(column: string): Float64Array;
  bounds(column: string): Int8Array;
}

const EMPTY: Table = { rows: 0, columns: new Map() };
const STAGES: Readonly<Record<string, number>> = { as_found: 0, as_left: 2 };

/** @param known the readings of the same inputs, where they have been grouped before; without them the supply is not looked at */
export function fleetOf(parameters: RaiseParameters, inputs: Inputs, asOf: number, known?: FleetReadings): Fleet {
  const tables = (cell: string): CellResult['tables'] => inputs.get(cell)?.tables ?? {};
  const register = tables(parameters.register);
  const drift = tables(parameters.drift);
  const readings = tables(parameters.readings)['accepted'] ?? EMPTY;
  const { derived, fuels, exponents } = tables(parameters.derive);
  return {
    asOf,
    readings: known ?? readFleet(readings, derived?.rows === readings.rows ? derived : coOfReadings(readings)),
    // A register without units is none: the fleet is what was read.
    units: register['units']?.rows ? register['units'] : undefined,
    fuels,
    exponents,
    supplyLimits: register['supply-limits'],
    economics: register['economics'],
    planning: register['planning'],
    drift: drift['drift'],
    points: drift['points'],
    supply:
      tables(parameters.supply)['supply'] ??
      (known && supplyOfReadings(readings, register['units'], register['supply-limits'], asOf)),
    instruments: tables(parameters.instruments)['instruments'],
    events: eventsOf(tables(parameters.events)['events']),
  };
}

function readFleet(table: Table, derived: Table): FleetReadings {
  const byUnit = rowsByKey(table, ['unit']);
  const state = textsOf(table, 'state');
  const stage = Int8Array.from(state.codes, (_, row) => STAGES[textAt(state, row)] ?? 1);
  const holder = (column: string): Table => (derived.columns.has(column) ? derived : table);
  return {
    table,
    derived,
    byUnit,
    lanesOf: laneReader(byUnit, textsOf(holder('fuel'), 'fuel'), textsOf(holder('fire'), 'fire')),
    day: numbersOf(table, 'taken_at'),
    stage,
    text: (column) => {
      const texts = textsOf(holder(column), column);
      return (row) => textAt(texts, row);
    },
    number: (column) => numbersOf(holder(column), column),
    bounds: (column) => boundsOf(table, column),
  };
}

const NO_LANES: readonly (readonly number[])[] = [];

function laneReader(
  byUnit: ReadonlyMap<string, readonly number[]>,
  fuel: TextColumn,
  fire: TextColumn,
): (unit: string) => readonly (readonly number[])[] {
  const known = new Map<string, readonly (readonly number[])[]>();
  const lanesOf = (rows: readonly number[]): number[][] => {
    const lanes: number[][] = [];
    for (const row of rows) {
      const own = lanes.find(
        ([first]) => fuel.codes[first] === fuel.codes[row] && fire.codes[first] === fire.codes[row],
      );
      if (own) own.push(row);
      else lanes.push([row]);
    }
    return lanes;
  };
  return (unit) => {
    const rows = byUnit.get(unit);
    if (!rows) return NO_LANES;
    const lanes = known.get(unit) ?? lanesOf(rows);
    known.set(unit, lanes);
    return lanes;
  };
}

function eventsOf(table: Table | undefined): Map<string, UnitEvent[]> {
  if (!table) return new Map();
  const event = textsOf(table, 'event');
  const on = numbersOf(table, 'on');
  return new Map(
    [...rowsByKey(table, ['unit'])].map(([unit, rows]) => [
      unit,
      rows.map((row) => ({ day: on[row], event: textAt(event, row) })).sort((a, b) => a.day - b.day),
    ]),
  );
}

/** Whether the unit is out of use on the day: retired by register or event, or laid up and not yet recommissioned. */
export function restingOf(fleet: Fleet): (unit: string) => 'retired' | 'laid_up' | '' {
  const retiredOn = new Map<string, number>();
  if (fleet.units) {
    const unit = textsOf(fleet.units, 'unit');
    const retired = numbersOf(fleet.units, 'retired_on');
    for (let row = 0; row < fleet.units.rows; row++)
      if (Number.isFinite(retired[row])) retiredOn.set(textAt(unit, row), retired[row]);
  }
  return (unit) => {
    if ((retiredOn.get(unit) ?? Number.POSITIVE_INFINITY) <= fleet.asOf) return 'retired';
    let resting: 'retired' | 'laid_up' | '' = '';
    for (const { day, event } of fleet.events.get(unit) ?? []) {
      if (!(day <= fleet.asOf)) continue;
      if (event === 'retired' || event === 'laid_up') resting = event;
      else if (event === 'recommissioned' || event === 'replaced') resting = '';
    }
    return resting;
  };
}
