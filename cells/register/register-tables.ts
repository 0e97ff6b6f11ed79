import * as say from '../../shared/messages/import.ts';
import { atLeastZero, inOrder } from '../../shared/readings/bounded-cell.ts';
import { energyOfOne } from '../../shared/readings/fuel-energy.ts';
import type { CellFault } from '../../shared/readings/read-table.ts';
import { FIRES, FUEL_UNITS, QUANTITIES } from '../../shared/readings/register-vocabulary.ts';
import {
  economicsSchema,
  limitsSchema,
  planningSchema,
  supplyLimitsSchema,
  targetsSchema,
  unitsSchema,
} from '../../shared/schemas/register.ts';
import { numberColumn, numbersOf, textColumn } from '../../shared/table/columns.ts';
import type { Schema } from '../../shared/table/schema.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import { takeTable } from '../../shared/table/take-table.ts';
import type { RegisterRow } from './register-row.ts';

type Value = string | number;
type Values = Readonly<Record<string, Value>>;

/** The register in its tables, each sorted by unit, fuel and day. */
export function registerTables(rows: readonly RegisterRow[], faults: CellFault[]): Readonly<Record<string, Table>> {
  const sorted = [...rows].sort(
    (a, b) => order(a.text('unit'), b.text('unit')) || order(a.fuel, b.fuel) || days(a) - days(b) || a.line - b.line,
  );
  const byUnit = groupByUnit(sorted);
  const limits = tableOfValues(
    limitsSchema,
    sorted.flatMap((row) => limitValues(row, faults)),
  );
  return {
    units: tableOfValues(
      unitsSchema,
      sorted.map((row) => unitValues(row, faults)),
    ),
    limits,
    targets: targetsAmong(limits),
    'supply-limits': tableOfValues(
      supplyLimitsSchema,
      byUnit.flatMap((rows) => supplyValues(rows, faults)),
    ),
    economics: tableOfValues(
      economicsSchema,
      sorted.flatMap((row) => economicsValues(row, faults)),
    ),
    planning: tableOfValues(planningSchema, byUnit.flatMap(planningValues)),
  };
}

/** What technicians set to. Who reads this alone is not reached by a change of what must hold between visits. */
function targetsAmong(limits: Table): Table {
  const target = numbersOf(limits, 'target_pct');
  const known = [...target.keys()].filter((row) => Number.isFinite(target[row]));
  const told = new Set(targetsSchema.map(({ name }) => name));
  return makeTable([...takeTable(limits, known).columns].filter(([name]) => told.has(name)));
}

function groupByUnit(sorted: readonly RegisterRow[]): RegisterRow[][] {
  const groups = new Map<string, RegisterRow[]>();
  for (const row of sorted) {
    const group = groups.get(row.text('unit'));
    if (group) group.push(row);
    else groups.set(row.text('unit'), [row]);
  }
  return [...groups.values()];
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
/** A row without a day holds from the beginning. */
const days = (row: RegisterRow): number => {
  const day = row.date('valid_from');
  return Number.isNaN(day) ? Number.MIN_SAFE_INTEGER : day;
};

const KW = ['heat_input_high', 'heat_input_low'];

function unitValues(row: RegisterRow, faults: CellFault[]): Values {
  const values: Record<string, Value> = {};
  for (const { name, kind } of unitsSchema) {
    if (name === 'source_file') values[name] = row.file;
    else if (name === 'source_line') values[name] = row.line;
    else if (name === 'fuel') values[name] = row.fuel;
    else if (kind === 'text') values[name] = row.text(name);
    else if (kind === 'date') values[name] = row.date(name);
    else {
      const power = KW.find((field) => name === `${field}_kW`);
      values[name] = power ? atLeastZero(row, power, faults) : row.number(name);
    }
  }
  return values;
}

/** Target and tolerance, or lower and upper where they are lopsided, in the long form. */
function limitValues(row: RegisterRow, faults: CellFault[]): Values[] {
  return FIRES.flatMap((fire) =>
    QUANTITIES.flatMap((quantity) => {
      const field = (limit: string): string => `${quantity}_${fire}_${limit}_pct`;
      const target = atLeastZero(row, field('target'), faults);
      const tolerance = atLeastZero(row, field('tolerance'), faults);
      const [lower, upper] = inOrder(row, [field('lower'), field('upper')], faults);
      const [serviceLower, serviceUpper] = inOrder(row, [field('service_lower'), field('service_upper')], faults);
      const values = {
        target_pct: target,
        setting_lower_pct: otherwise(lower, target - tolerance),
        setting_upper_pct: otherwise(upper, target + tolerance),
        service_lower_pct: serviceLower,
        service_upper_pct: serviceUpper,
      };
      if (Object.values(values).every(Number.isNaN)) return [];
      const key = { unit: row.text('unit'), fuel: row.fuel, valid_from: row.date('valid_from') };
      return [{ ...key, fire, quantity: `${quantity}_pct`, ...values }];
    }),
  );
}

const otherwise = (value: number, instead: number): number => (Number.isNaN(value) ? instead : value);

/** Of a unit on several rows the latest known value counts: the plate is one. */
function latest(values: readonly number[]): number {
  return values.reduce((found, value) => otherwise(value, found), Number.NaN);
}

function supplyValues(rows: readonly RegisterRow[], faults: CellFault[]): Values[] {
  const limits = rows.map((row) => inOrder(row, ['supply_min', 'supply_max'], faults));
  const values = {
    supply_min_Pa: latest(limits.map(([lower]) => lower)),
    supply_max_Pa: latest(limits.map(([, upper]) => upper)),
    drop_limit_Pa: latest(rows.map((row) => atLeastZero(row, 'supply_drop_limit', faults))),
  };
  return Object.values(values).every(Number.isNaN) ? [] : [{ unit: rows[0].text('unit'), ...values }];
}

/** Of a unit's rows for one fuel only the last tells what a year takes. */
function economicsValues(row: RegisterRow, faults: CellFault[]): Values[] {
  const [quantity, price] = ['annual_fuel', 'fuel_price'].map((name) => atLeastZero(row, name, faults));
  const share = fireShare(row, faults);
  if ([quantity, price, share].every(Number.isNaN)) return [];
  const code = row.unit('annual_fuel');
  const one = energyOfOne(code, row.fuel || 'natural_gas');
  if (Number.isNaN(one) && !Number.isNaN(quantity))
    faults.push({ file: row.file, line: row.line, reason: say.noEnergy(code, row.fuel) });
  return [
    {
      unit: row.text('unit'),
      fuel: row.fuel,
      annual_fuel_kWh: quantity * one,
      annual_fuel_unit: Object.entries(FUEL_UNITS).find(([, known]) => known === code)?.[0] ?? code,
      fuel_price_per_kWh: price / one,
      low_fire_share: share,
    },
  ];
}

/** 0 to 1; from 2 to 100 it can only be per cent. */
function fireShare(row: RegisterRow, faults: CellFault[]): number {
  const share = row.number('low_fire_share');
  if (share >= 2 && share <= 100) return share / 100;
  if (!(share < 0 || share > 1)) return share;
  const { file, line } = row;
  faults.push({ file, line, reason: say.outOfBounds('low_fire_share', String(share), 'a share is 0 to 1') });
  return Number.NaN;
}

function planningValues(rows: readonly RegisterRow[]): Values[] {
  const values: Record<string, Value> = {};
  for (const { name, kind } of planningSchema.slice(1)) {
    const known = rows
      .map((row): Value => (kind === 'text' ? row.text(name) : kind === 'date' ? row.date(name) : row.number(name)))
      .filter((value) => value !== '' && !Number.isNaN(value));
    values[name] = known.at(-1) ?? (kind === 'text' ? '' : Number.NaN);
  }
  const any = Object.values(values).some((value) => value !== '' && !Number.isNaN(value));
  return any ? [{ unit: rows[0].text('unit'), ...values }] : [];
}

function tableOfValues(schema: Schema, rows: readonly Values[]): Table {
  return makeTable(
    schema.map(({ name, kind, unit }): [string, Column] => {
      if (kind === 'text') return [name, textColumn(rows.map((row) => String(row[name] ?? '')))];
      const values = Float64Array.from(rows, (row) => Number(row[name] ?? Number.NaN));
      return [name, kind === 'date' ? { kind, values } : numberColumn(unit, values)];
    }),
  );
}
