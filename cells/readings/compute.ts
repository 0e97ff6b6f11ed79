import type { CellContext, CellResult, Inputs, SourceFile } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import type { FileAccount } from '../../shared/readings/account.ts';
import { columnsTable } from '../../shared/readings/columns-table.ts';
import { type ImportFindings, importReadings } from '../../shared/readings/import-readings.ts';
import type { FilePlan } from '../../shared/readings/mapping.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { ReadingsParameters } from './parameters.ts';

/** Tables: accepted, set-aside, account, duplicates, proposals, told-events, columns. */
export interface ReadingsResult extends CellResult {
  readonly files: readonly FileAccount[];
  readonly found: ImportFindings;
  /** How each file was read. */
  readonly plans: readonly FilePlan[];
}

export async function compute(
  parameters: ReadingsParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<ReadingsResult>> {
  const files: SourceFile[] = [];
  for (const key of parameters.files) {
    const file = context.source(key);
    if (!file) return fail(say.lostFile('readings', key));
    files.push(file);
  }
  if (files.length === 0) return fail(say.noFiles('readings'));
  const units = parameters.register === '' ? undefined : inputs.get(parameters.register)?.tables['units'];
  const imported = await importReadings(
    files,
    {
      ...parameters,
      registered: units && units.rows > 0 ? textsOf(units, 'unit').levels : undefined,
      fuelled: unitsWhere(units, 'fuel', (fuel) => fuel !== ''),
      singleStage: unitsWhere(units, 'firing', (firing) => firing === 'single'),
    },
    context,
  );
  if (imported.status !== 'value') return imported;
  const { accepted, setAside, account, duplicates, proposals, toldEvents, ...rest } = imported.value;
  return succeed({
    tables: {
      accepted,
      'set-aside': setAside,
      account,
      duplicates,
      proposals,
      'told-events': toldEvents,
      columns: columnsTable(rest.plans, rest.found.unknownWords),
    },
    files: rest.files,
    found: rest.found,
    plans: rest.plans,
  });
}

/** Units of the register with a column of which a test holds. */
function unitsWhere(units: Table | undefined, column: string, holds: (text: string) => boolean): ReadonlySet<string> {
  if (!units) return new Set();
  const [unit, value] = [textsOf(units, 'unit'), textsOf(units, column)];
  return new Set(Array.from(unit.codes).flatMap((_, row) => (holds(textAt(value, row)) ? [textAt(unit, row)] : [])));
}
