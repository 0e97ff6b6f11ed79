import type { Correction } from '../../shared/corrections/correction.ts';
import { readCorrections } from '../../shared/corrections/read-corrections.ts';
import * as say from '../../shared/messages/corrections.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

export interface CorrectionsParameters {
  /** The cell whose readings are corrected; cells that read corrected readings name this cell instead. */
  readonly readings: string;
  readonly corrections: readonly Correction[];
}

export function readParameters(raw: unknown): Outcome<CorrectionsParameters> {
  const given = (typeof raw === 'object' && raw !== null ? raw : {}) as Readonly<Record<string, unknown>>;
  const { readings = 'readings', corrections = [] } = given;
  if (typeof readings !== 'string' || readings === '') return fail(say.notCell(JSON.stringify(readings) ?? 'missing'));
  const read = readCorrections(corrections);
  return read.status === 'value' ? succeed({ readings, corrections: read.value }) : read;
}
