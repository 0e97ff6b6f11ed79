import type { CellContext, CellResult, Inputs, SourceFile } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { findUnit } from '../../shared/quantities/find-unit.ts';
import { atLeastZero } from '../../shared/readings/bounded-cell.ts';
import { columnsTable } from '../../shared/readings/columns-table.ts';
import { energyOfOne } from '../../shared/readings/fuel-energy.ts';
import { fuelName, nearestFuel } from '../../shared/readings/fuel-names.ts';
import { FUEL_USE_VOCABULARY } from '../../shared/readings/fuel-use-vocabulary.ts';
import { type CellFault, readTable, type SmallRow } from '../../shared/readings/read-table.ts';
import { registeredUnits } from '../../shared/readings/registered-units.ts';
import { faultTable } from '../../shared/readings/told-faults.ts';
import { numberColumn, textAt, textColumn, textsOf } from '../../shared/table/columns.ts';
import { makeTable, type Table } from '../../shared/table/table.ts';
import type { FuelUseParameters } from './parameters.ts';

/** Tables: use, sorted by unit, fuel and first day; faults; columns. */
export interface FuelUseResult extends CellResult {
  readonly faults: readonly CellFault[];
  readonly notes: readonly string[];
}

interface Period {
  readonly unit: string;
  readonly fuel: string;
  readonly from: number;
  readonly to: number;
  readonly energyKWh: number;
  readonly cost: number;
}

export async function compute(
  parameters: FuelUseParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<FuelUseResult>> {
  const files: SourceFile[] = [];
  for (const key of parameters.files) {
    const file = context.source(key);
    if (!file) return fail(say.lostFile('fuel-use', key));
    files.push(file);
  }
  if (files.length === 0) return fail(say.noFiles('fuel-use'));
  const needs = {
    vocabulary: FUEL_USE_VOCABULARY,
    fields: ['unit', 'from', 'to', 'quantity'],
    words: 'the unit, the first and the last day and the quantity',
  };
  const read = await readTable(
    files,
    { ...needs, dateOrder: parameters.dateOrder, profiles: parameters.profiles },
    context,
  );
  if (read.status !== 'value') return read;
  const { rows, faults } = read.value;
  const units = parameters.register === '' ? undefined : inputs.get(parameters.register)?.tables['units'];
  const spell = registeredUnits(units, faults);
  const fuels = registeredFuels(units);
  const periods: Period[] = [];
  for (const row of rows) {
    const written = row.text('fuel');
    const fuel = written === '' ? '' : fuelName(written, parameters.fuels);
    if (fuel === '' && written !== '') return fail(say.unknownFuel(row.file, row.line, written, nearestFuel(written)));
    const unit = spell(row.text('unit'), row);
    const period = periodOf(row, unit, fuel || (fuels.get(unit) ?? ''), faults);
    if (period) periods.push(period);
  }
  return succeed({
    tables: { use: useTable(periods), faults: faultTable(faults), columns: columnsTable(read.value.plans) },
    faults,
    notes: read.value.notes,
  });
}

function periodOf(row: SmallRow, unit: string, fuel: string, faults: CellFault[]): Period | undefined {
  const { file, line } = row;
  const [from, to] = [row.date('from'), row.date('to')];
  const reason = unit === '' ? say.noUnitRow() : !(from <= to) ? say.badPeriod() : '';
  if (reason !== '') {
    faults.push({ file, line, reason, row: true });
    return undefined;
  }
  const measure = row.text('quantity_unit');
  const code = measure === '' ? row.unit('quantity') : (findUnit(measure)?.code ?? '');
  const quantity = atLeastZero(row, 'quantity', faults);
  const one = energyOfOne(code, fuel);
  if (Number.isNaN(one) && !Number.isNaN(quantity))
    faults.push({ file, line, reason: say.noEnergy(measure || code || 'a quantity without a unit', fuel) });
  return { unit, fuel, from, to, energyKWh: quantity * one, cost: atLeastZero(row, 'cost', faults) };
}

/** The fuel of each unit that the register gives exactly one. */
function registeredFuels(units: Table | undefined): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  if (!units) return found;
  const [unit, fuel] = [textsOf(units, 'unit'), textsOf(units, 'fuel')];
  for (let row = 0; row < units.rows; row++) {
    const known = found.get(textAt(unit, row));
    const here = textAt(fuel, row);
    found.set(textAt(unit, row), known === undefined || known === here ? here : '');
  }
  return found;
}

function useTable(periods: readonly Period[]): Table {
  const sorted = [...periods].sort((a, b) => order(a.unit, b.unit) || order(a.fuel, b.fuel) || a.from - b.from);
  const numbers = (of: (period: Period) => number): Float64Array => Float64Array.from(sorted, of);
  return makeTable([
    ['unit', textColumn(sorted.map(({ unit }) => unit))],
    ['fuel', textColumn(sorted.map(({ fuel }) => fuel))],
    ['from', { kind: 'date', values: numbers(({ from }) => from) }],
    ['to', { kind: 'date', values: numbers(({ to }) => to) }],
    [
      'energy_kWh',
      numberColumn(
        'kW.h',
        numbers(({ energyKWh }) => energyKWh),
      ),
    ],
    [
      'cost',
      numberColumn(
        '1',
        numbers(({ cost }) => cost),
      ),
    ],
  ]);
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
