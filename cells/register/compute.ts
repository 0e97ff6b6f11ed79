import type { CellContext, CellResult, Inputs, SourceFile } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { columnsTable } from '../../shared/readings/columns-table.ts';
import { fuelName, nearestFuel } from '../../shared/readings/fuel-names.ts';
import { type CellFault, readTable, type SmallRow } from '../../shared/readings/read-table.ts';
import { REGISTER_VOCABULARY } from '../../shared/readings/register-vocabulary.ts';
import { faultTable } from '../../shared/readings/told-faults.ts';
import { filledRow } from './filled-row.ts';
import { gapsTable } from './gaps.ts';
import type { RegisterParameters } from './parameters.ts';
import type { RegisterRow } from './register-row.ts';
import { registerTables } from './register-tables.ts';

/** Without a file it has no units, and those that read it take the units of the readings. Tables: units, limits, targets, supply-limits, economics, planning, gaps, faults, columns. */
export interface RegisterResult extends CellResult {
  readonly faults: readonly CellFault[];
  readonly notes: readonly string[];
}

const NEEDS = { vocabulary: REGISTER_VOCABULARY, fields: ['unit'], words: 'the unit' };

export async function compute(
  parameters: RegisterParameters,
  _inputs: Inputs,
  context: CellContext,
): Promise<Outcome<RegisterResult>> {
  const files: SourceFile[] = [];
  for (const key of parameters.files) {
    const file = context.source(key);
    if (!file) return fail(say.lostFile('register', key));
    files.push(file);
  }
  const read = await readTable(
    files,
    { ...NEEDS, dateOrder: parameters.dateOrder, profiles: parameters.profiles },
    context,
  );
  if (read.status !== 'value') return read;
  const { faults } = read.value;
  const whole = read.value.rows.map((row) => filledRow(row, parameters.filled));
  const rows = usableRows(whole, parameters.fuels, faults);
  if (rows.status !== 'value') return rows;
  if (rows.value.length === 0 && files.length > 0) return fail(say.noRows(files[0].name));
  const tables = registerTables(rows.value, faults);
  return succeed({
    tables: { ...tables, gaps: gapsTable(tables), faults: faultTable(faults), columns: columnsTable(read.value.plans) },
    faults,
    notes: read.value.notes,
  });
}

/** Rows that name a unit, each unit, fuel and day once. A fuel that nobody knows is an error. */
function usableRows(
  rows: readonly SmallRow[],
  own: readonly string[],
  faults: CellFault[],
): Outcome<readonly RegisterRow[]> {
  const first = new Map<string, number>();
  const usable: RegisterRow[] = [];
  for (const row of rows) {
    const { file, line } = row;
    const [unit, written] = [row.text('unit'), row.text('fuel')];
    if (unit === '') {
      faults.push({ file, line, reason: say.noUnitRow(), row: true });
      continue;
    }
    const fuel = written === '' ? '' : fuelName(written, own);
    if (fuel === '' && written !== '') return fail(say.unknownFuel(file, line, written, nearestFuel(written)));
    const key = JSON.stringify([unit, fuel, row.date('valid_from')]);
    const known = first.get(key);
    if (known !== undefined) {
      faults.push({ file, line, reason: say.twoRows(known), row: true });
      continue;
    }
    first.set(key, line);
    usable.push({ ...row, fuel });
  }
  return succeed(usable);
}
