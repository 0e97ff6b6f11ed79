import { AIR_OXYGEN_PCT } from '../combustion/oxygen-in-air.ts';
import { knownFuels } from '../fuels/known-fuels.ts';
import { atOnce, type Pieces } from '../pieces.ts';
import { medianOf } from '../statistics/median-of.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table, TextColumn } from '../table/table.ts';
import { aimsOf } from './aims.ts';
import { co2AsO2 } from './co2-line.ts';
import { type FleetReadings, READING_STATE } from './fleet-readings.ts';
import { type LaneGas, type ZoneMonth, zoneMonthsOf } from './gas-zones.ts';
import { hardwareOf } from './lane-keys.ts';
import type { LaneName } from './lane-name.ts';
import { mostUsedAnalyzers } from './most-used-analyzers.ts';
import { eventDays, NEW_SERIES_EVENTS } from './series-breaks.ts';

export interface DriftTables {
  readonly readings: Table;
  /** Same rows and order as readings. */
  readonly derived: Table;
  readonly units: Table | undefined;
  /** The register's limits: what technicians set to. */
  readonly limits: Table | undefined;
  readonly events: Table | undefined;
  /** The fuels beside the derived readings: the notebook's own are only there. */
  readonly fuels?: Table | undefined;
}

/** The fleet's readings in points of O2, with the names that its numbers stand for. */
export interface DriftReadings {
  readonly fleet: FleetReadings;
  /** Row of the tables that each reading stands in. */
  readonly sourceRow: Int32Array;
  readonly lanes: readonly LaneName[];
  readonly analyzers: readonly string[];
  readonly fuels: readonly string[];
  /** Per fuel: the CO2max of the line between CO2 and O2. */
  readonly co2max: Float64Array;
  /** What the codes of gas zones and months stand for. */
  readonly zoneMonths: readonly ZoneMonth[];
  /** Per reading: 1 where it was left out of the fit as gross. */
  readonly gross?: Uint8Array;
  /** Analyzers told as two: what each reads from its day on stands, in this order, behind the analyzers themselves. */
  readonly splits?: readonly AnalyzerSplit[];
}

/** An analyzer that reads otherwise from a day on. */
export interface AnalyzerSplit {
  readonly of: number;
  readonly on: number;
}

/** A probe that is out of the flue, or a number that is none. */
const plausibleO2 = (o2: number): boolean => o2 > -0.5 && o2 < 18;

/** @param referenceAir whether O2 and CO2 are taken at reference air or as measured */
export function readDrift(tables: DriftTables, asOf: number, referenceAir: boolean): DriftReadings {
  return atOnce(readingDrift(tables, asOf, referenceAir));
}

/** The same, by pieces. */
export function* readingDrift(tables: DriftTables, asOf: number, referenceAir: boolean): Pieces<DriftReadings> {
  const { derived, readings } = tables;
  const columns = driftColumns(derived, referenceAir);
  yield;
  const order = rowsInOrder(derived, asOf);
  yield;
  const fuels = new Names();
  const lanes = groupLanes(tables, order, fuels);
  yield;
  const analyzers = mostUsedAnalyzers(textsOf(readings, 'analyzer'), order);
  const co2max = lineOfFuels(derived, order, fuels, tables.fuels);
  const visits = textsOf(readings, 'visit');
  const pick = (values: ArrayLike<number>): Float64Array => Float64Array.from(order, (row) => values[row]);
  const codes = (column: TextColumn): Int32Array => Int32Array.from(order, (row) => column.codes[row]);
  const first = pick(columns.o2).map((o2) => (plausibleO2(o2) ? o2 : Number.NaN));
  const second = pick(columns.co2).map((co2, i) => {
    const o2 = co2AsO2(co2, co2max[lanes.fuelOf[lanes.lane[i]]]);
    return plausibleO2(o2) ? o2 : Number.NaN;
  });
  yield;
  const breaks = eventDays(tables.events, NEW_SERIES_EVENTS, asOf);
  const states = statesOf(textsOf(derived, 'state'), order);
  const day = pick(numbersOf(derived, 'taken_at'));
  const line = (lane: number): number => co2max[lanes.fuelOf[lane]];
  const judged = { first, second, states, day, lane: lanes.lane };
  yield;
  const zoneMonths = zoneMonthsOf(day, lanes.lane, lanes.gas);
  const adjusted = answersOf(textsOf(readings, 'adjusted'), order);
  const { aimInCo2, ...aims } = aimsOf(tables, order, lanes.names, line, judged, adjusted);
  yield;
  const fleet: FleetReadings = {
    rows: order.length,
    unit: lanes.unit,
    lane: lanes.lane,
    day,
    state: states,
    adjusted,
    visit: codes(visits),
    analyzer: analyzers.codes,
    first,
    second,
    extra: pick(columns.extra),
    ...aims,
    zoneMonth: zoneMonths.codes,
    zoneMonths: zoneMonths.list.length,
    lanes: { count: lanes.names.length, unit: lanes.unitOf, classOf: lanes.classOf, fuel: lanes.fuelOf, aimInCo2 },
    units: lanes.units.list.length,
    analyzers: analyzers.names.length,
    laterAnalyzers: 0,
    classes: lanes.classes.list.length,
    fuels: fuels.list.length,
    breaks: lanes.units.list.map((unit) => breaks.get(unit) ?? []),
  };
  return {
    fleet,
    sourceRow: Int32Array.from(order),
    lanes: lanes.names,
    analyzers: analyzers.names,
    fuels: fuels.list,
    co2max,
    zoneMonths: zoneMonths.list,
  };
}

/** Texts numbered in order of first appearance. */
class Names {
  readonly list: string[] = [];
  readonly #places = new Map<string, number>();
  place(name: string): number {
    let place = this.#places.get(name);
    if (place === undefined) {
      place = this.list.length;
      this.list.push(name);
      this.#places.set(name, place);
    }
    return place;
  }
}

interface DriftColumns {
  readonly o2: Float64Array;
  readonly co2: Float64Array;
  readonly extra: Float64Array;
}

/** Measured O2, measured CO2, and the variance that bringing O2 to reference air adds; NaN where not measured. */
function driftColumns(derived: Table, referenceAir: boolean): DriftColumns {
  const suffix = referenceAir ? '_reference_pct' : '_pct';
  const measured = (name: string): Float64Array => {
    const from = textsOf(derived, `${name}_from`);
    const calculated = from.levels.indexOf('calculated');
    const values = numbersOf(derived, `${name}${suffix}`);
    return values.map((value, row) => (calculated >= 0 && from.codes[row] === calculated ? Number.NaN : value));
  };
  const shown = numbersOf(derived, 'o2_pct_sd');
  const atReference = numbersOf(derived, 'o2_reference_pct_sd');
  const extra = shown.map((sd, row) => {
    const added = atReference[row] * atReference[row] - sd * sd;
    return referenceAir && added > 0 ? added : 0;
  });
  return { o2: measured('o2'), co2: measured('co2'), extra };
}

/** Rows up to the as-of day by unit, then time: the tables' own order where it is sorted already. */
function rowsInOrder(derived: Table, asOf: number): number[] {
  const unit = textsOf(derived, 'unit').codes;
  const day = numbersOf(derived, 'taken_at');
  const rows: number[] = [];
  const place = new Map<number, number>();
  let sorted = true;
  for (let row = 0; row < derived.rows; row++) {
    if (unit[row] < 0 || !(day[row] < asOf + 1)) continue;
    const last = rows[rows.length - 1];
    if (!place.has(unit[row])) place.set(unit[row], place.size);
    else if (unit[last] !== unit[row]) sorted = false;
    if (last !== undefined && unit[last] === unit[row] && day[last] > day[row]) sorted = false;
    rows.push(row);
  }
  const at = (row: number): number => place.get(unit[row]) ?? 0;
  return sorted ? rows : rows.sort((a, b) => at(a) - at(b) || day[a] - day[b] || a - b);
}

interface LaneGroups {
  /** Per reading. */
  readonly unit: Int32Array;
  readonly lane: Int32Array;
  /** Per lane. */
  readonly names: LaneName[];
  readonly unitOf: Int32Array;
  readonly classOf: Int32Array;
  readonly fuelOf: Int32Array;
  readonly gas: LaneGas[];
  readonly units: Names;
  readonly classes: Names;
}

/** Numbers lanes unit by unit, and names each lane's class: burner, control, fuel and fire. */
function groupLanes({ derived, units: register }: DriftTables, order: readonly number[], fuels: Names): LaneGroups {
  const [unit, fuel, fire] = ['unit', 'fuel', 'fire'].map((name) => textsOf(derived, name));
  const hardware = hardwareOf(register);
  const units = new Names();
  const classes = new Names();
  const names: LaneName[] = [];
  const gas: LaneGas[] = [];
  const [unitOf, classOf, fuelOf]: number[][] = [[], [], []];
  const lane = new Int32Array(order.length);
  const unitPlace = new Int32Array(order.length);
  const known = new Map<number, number>();
  let current = -1;
  order.forEach((row, i) => {
    if (unit.codes[row] !== current) known.clear();
    current = unit.codes[row];
    unitPlace[i] = units.place(textAt(unit, row));
    const key = (fuel.codes[row] + 1) * 64 + fire.codes[row] + 1;
    let place = known.get(key);
    if (place === undefined) {
      place = names.length;
      known.set(key, place);
      const name = { unit: textAt(unit, row), fuel: textAt(fuel, row), fire: textAt(fire, row) };
      const { burner, control, trim, zone } = hardware(name.unit, name.fuel);
      names.push(name);
      gas.push({ fuel: name.fuel, zone, trim });
      unitOf.push(unitPlace[i]);
      classOf.push(classes.place([burner, control, name.fuel, name.fire].join('\u0000')));
      fuelOf.push(fuels.place(name.fuel));
    }
    lane[i] = place;
  });
  return {
    unit: unitPlace,
    lane,
    names,
    gas,
    unitOf: Int32Array.from(unitOf),
    classOf: Int32Array.from(classOf),
    fuelOf: Int32Array.from(fuelOf),
    units,
    classes,
  };
}

/** CO2max by fuel: what the fleet's own calculated CO2 implies where it has any, since technicians set by it. */
function lineOfFuels(
  derived: Table,
  order: readonly number[],
  fuels: Names,
  composed: Table | undefined,
): Float64Array {
  const [o2, co2] = [numbersOf(derived, 'o2_pct'), numbersOf(derived, 'co2_pct')];
  const [fuel, from] = [textsOf(derived, 'fuel'), textsOf(derived, 'co2_from')];
  const calculated = from.levels.indexOf('calculated');
  const fuelOf = knownFuels(composed);
  return Float64Array.from(fuels.list, (name) => {
    const known = fuelOf(name)?.co2maxPct ?? 11.85;
    const implied: number[] = [];
    const code = fuel.levels.indexOf(name);
    for (const row of calculated >= 0 ? order : []) {
      if (fuel.codes[row] !== code || from.codes[row] !== calculated) continue;
      const co2max = co2[row] / (1 - o2[row] / AIR_OXYGEN_PCT);
      if (Math.abs(co2max / known - 1) < 0.04) implied.push(co2max);
    }
    return implied.length > 0 ? medianOf(implied) : known;
  });
}

function statesOf(column: TextColumn, order: readonly number[]): Uint8Array {
  const meaning = column.levels.map((level) =>
    level === 'as_found'
      ? READING_STATE.found
      : level === 'as_left'
        ? READING_STATE.left
        : level === 'trial'
          ? READING_STATE.trial
          : READING_STATE.unknown,
  );
  return Uint8Array.from(order, (row) => meaning[column.codes[row]] ?? READING_STATE.unknown);
}

function answersOf(column: TextColumn, order: readonly number[]): Int8Array {
  const meaning = column.levels.map((level) => (level === 'yes' ? 1 : level === 'no' ? 0 : -1));
  return Int8Array.from(order, (row) => meaning[column.codes[row]] ?? -1);
}
