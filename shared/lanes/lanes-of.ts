import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import type { Lane, LanePathPoint, LaneReading, SupplyLane, UnitLanes } from './lane.ts';

/** The tables that hold a fleet's history; those left out draw nothing. */
export interface LaneTables {
  /** drift: one row a unit, fuel and fire. */
  readonly drift: Table;
  /** points: unit, fuel, fire, day, quantity, value, as_measured, state. */
  readonly points: Table;
  /** path: unit, fuel, fire, day, level, lower, upper. */
  readonly path: Table;
  readonly supply?: Table | undefined;
  /** points of the supply: unit, day, drop_Pa. */
  readonly supplyPoints?: Table | undefined;
  readonly supplyPath?: Table | undefined;
  /** The register's units, for site and building. */
  readonly units?: Table | undefined;
}

/** High above low; whatever has no order follows by name. */
const FIRE_ORDER: readonly string[] = ['high', 'mid', 'single', 'unnamed', 'low'];

/** Rows of each key among the wanted ones, in table order. */
type RowIndex = ReadonlyMap<string, readonly number[]>;

const key = (...parts: readonly string[]): string => parts.join('\u0000');

function indexRows(table: Table | undefined, columns: readonly string[], wanted: ReadonlySet<string>): RowIndex {
  const rows = new Map<string, number[]>();
  if (!table) return rows;
  const texts = columns.map((name) => textsOf(table, name));
  // Codes are compared, not texts: a table of a large fleet has millions of rows, of which a dozen units' are wanted.
  const { codes, levels } = texts[0];
  const isWanted = levels.map((level) => wanted.has(level));
  for (let row = 0; row < table.rows; row++) {
    if (!isWanted[codes[row]]) continue;
    const name = key(...texts.map((column) => textAt(column, row)));
    const found = rows.get(name);
    if (found) found.push(row);
    else rows.set(name, [row]);
  }
  return rows;
}

function readPath(table: Table | undefined, rows: readonly number[]): LanePathPoint[] {
  if (!table) return [];
  const [day, level, lower, upper] = ['day', 'level', 'lower', 'upper'].map((name) => numbersOf(table, name));
  return rows
    .map((row) => ({ day: day[row], level: level[row], lower: lower[row], upper: upper[row] }))
    .filter((point) => Number.isFinite(point.day) && Number.isFinite(point.level));
}

/** The path run on, straight as it ends, to the day of leaving where that lies beyond it. */
function runOn(path: LanePathPoint[], leavesOn: number): LanePathPoint[] {
  const [before, last] = path.slice(-2);
  if (!last || !(leavesOn > last.day) || !(last.day > before.day)) return path;
  const steps = (leavesOn - last.day) / (last.day - before.day);
  const on = (from: number, to: number): number => to + (to - from) * steps;
  return [
    ...path,
    {
      day: leavesOn,
      level: on(before.level, last.level),
      lower: on(before.lower, last.lower),
      upper: on(before.upper, last.upper),
    },
  ];
}

function readReadings(table: Table, rows: readonly number[], quantity: string): LaneReading[] {
  const quantities = textsOf(table, 'quantity');
  const states = textsOf(table, 'state');
  const [day, value, shown] = ['day', 'value', 'as_measured'].map((name) => numbersOf(table, name));
  return rows
    .filter((row) => ['', quantity].includes(textAt(quantities, row)) && Number.isFinite(value[row] + day[row]))
    .map((row) => ({ day: day[row], value: value[row], asMeasured: shown[row], state: textAt(states, row) }));
}

/** Site and building as the register gives them, '' where unknown. */
function placesOf(units: Table | undefined): (unit: string) => string {
  const places = new Map<string, string>();
  if (units) {
    const [unit, site, building] = ['unit', 'site', 'building'].map((name) => textsOf(units, name));
    for (let row = 0; row < units.rows; row++) {
      const place = [textAt(building, row), textAt(site, row)].filter((part) => part !== '').join(', ');
      if (place !== '') places.set(textAt(unit, row), place);
    }
  }
  return (unit) => places.get(unit) ?? '';
}

function supplyLanes(tables: LaneTables, wanted: ReadonlySet<string>): (unit: string) => SupplyLane | undefined {
  const { supply, supplyPoints, supplyPath } = tables;
  const points = indexRows(supplyPoints, ['unit'], wanted);
  const path = indexRows(supplyPath, ['unit'], wanted);
  const heads = indexRows(supply, ['unit'], wanted);
  return (unit) => {
    if (!supplyPoints) return undefined;
    const [day, drop] = ['day', 'drop_Pa'].map((name) => numbersOf(supplyPoints, name));
    const readings = (points.get(unit) ?? [])
      .map((row) => ({ day: day[row], dropPa: drop[row] }))
      .filter((reading) => Number.isFinite(reading.day + reading.dropPa));
    if (readings.length === 0) return undefined;
    const head = heads.get(unit)?.[0];
    const limitPa = supply && head !== undefined ? numbersOf(supply, 'drop_limit_Pa')[head] : Number.NaN;
    return { limitPa, readings, path: readPath(supplyPath, path.get(unit) ?? []) };
  };
}

const fireOrder = (fire: string): number => {
  const place = FIRE_ORDER.indexOf(fire);
  return place < 0 ? FIRE_ORDER.length : place;
};

/** A set a fuel, high above low. */
function inTradeOrder(lanes: readonly Lane[]): Lane[] {
  const fuels = [...new Set(lanes.map(({ fuel }) => fuel))].sort();
  return [...lanes].sort(
    (a, b) => fuels.indexOf(a.fuel) - fuels.indexOf(b.fuel) || fireOrder(a.fire) - fireOrder(b.fire),
  );
}

/** A lane for a row of the drift table: limits and dates from there, history from points and path. */
function laneReader(tables: LaneTables, wanted: ReadonlySet<string>, asOf: number): (row: number) => Lane {
  const { drift, points, path } = tables;
  const pointRows = indexRows(points, ['unit', 'fuel', 'fire'], wanted);
  const pathRows = indexRows(path, ['unit', 'fuel', 'fire'], wanted);
  const [unit, fuel, fire, quantity] = ['unit', 'fuel', 'fire', 'quantity'].map((name) => textsOf(drift, name));
  const [target, lower, upper, leavesOn, horizon] = [
    'target_pct',
    'lower_limit',
    'upper_limit',
    'leaves_on_50',
    'horizon_on',
  ].map((name) => numbersOf(drift, name));
  return (row) => {
    const name = key(textAt(unit, row), textAt(fuel, row), textAt(fire, row));
    const judged = textAt(quantity, row) === 'o2_pct' ? 'o2_pct' : 'co2_pct';
    return {
      fuel: textAt(fuel, row),
      fire: textAt(fire, row),
      quantity: judged,
      target: target[row],
      lower: lower[row],
      upper: upper[row],
      readings: readReadings(points, pointRows.get(name) ?? [], judged),
      path: runOn(readPath(path, pathRows.get(name) ?? []), leavesOn[row]),
      leavesOn: leavesOn[row],
      asOf,
      horizon: horizon[row],
    };
  };
}

/**
 * The fire lanes of the given units, in the order asked for; a unit without history has no lanes. Each table is read
 * once, however many units are asked for.
 * @param asOf the day the notebook looks from, days since 1970-01-01
 */
export function lanesOf(tables: LaneTables, units: readonly string[], asOf: number): UnitLanes[] {
  const wanted = new Set(units);
  const laneAt = laneReader(tables, wanted, asOf);
  const supplyOf = supplyLanes(tables, wanted);
  const placeOf = placesOf(tables.units);
  const heads = indexRows(tables.drift, ['unit'], wanted);
  return units.map((unit) => {
    const lanes = inTradeOrder((heads.get(unit) ?? []).map(laneAt));
    const supply = supplyOf(unit);
    return supply ? { unit, place: placeOf(unit), lanes, supply } : { unit, place: placeOf(unit), lanes };
  });
}
