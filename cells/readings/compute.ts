import type { CellContext, CellResult, Inputs, SourceFile } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import type { FileAccount } from '../../shared/readings/account.ts';
import { type ImportFindings, importReadings } from '../../shared/readings/import-readings.ts';
import { textsOf } from '../../shared/table/columns.ts';
import type { ReadingsParameters } from './parameters.ts';

/** Tables: accepted, set-aside, account, duplicates. */
export interface ReadingsResult extends CellResult {
  readonly files: readonly FileAccount[];
  readonly found: ImportFindings;
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
    { ...parameters, registered: units && textsOf(units, 'unit').levels },
    context,
  );
  if (imported.status !== 'value') return imported;
  const { accepted, setAside, account, duplicates, files: accounts, found } = imported.value;
  return succeed({
    tables: { accepted, 'set-aside': setAside, account, duplicates },
    files: accounts,
    found,
  });
}
