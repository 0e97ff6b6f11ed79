import type { CellResult, Inputs } from '../../shared/cell.ts';
import { type InstrumentRow, judgeInstruments, tableOfInstruments } from '../../shared/foresight/judge-instruments.ts';
import { noSuchInput } from '../../shared/messages/foresight.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { textsOf } from '../../shared/table/columns.ts';
import type { InstrumentsParameters } from './parameters.ts';

export interface InstrumentsResult extends CellResult {
  readonly rows: readonly InstrumentRow[];
  /** Readings that do not name their analyzer. */
  readonly anonymous: number;
}

export async function compute(parameters: InstrumentsParameters, inputs: Inputs): Promise<Outcome<InstrumentsResult>> {
  const readings = inputs.get(parameters.readings)?.tables['accepted'];
  const analyzers = inputs.get(parameters.drift)?.tables['analyzers'];
  if (!readings) return fail(noSuchInput('instruments', 'readings'));
  if (!analyzers) return fail(noSuchInput('instruments', 'drift'));
  const rows = judgeInstruments(readings, analyzers, parameters.tolerancePct);
  const anonymous = textsOf(readings, 'analyzer').codes.filter((code) => code < 0).length;
  return succeed({ tables: { instruments: tableOfInstruments(rows) }, rows, anonymous });
}
