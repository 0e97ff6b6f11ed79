import type { Correction } from '../../shared/corrections/correction.ts';
import { signedCorrection } from '../../shared/corrections/correction-words.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { WorkedReading } from '../../shared/working/worked-reading.ts';
import type { CorrectionsResult } from './compute.ts';

/** Columns that say which reading it is: whatever a number rests on, it rests on them too. */
const NAMING: ReadonlySet<string> = new Set(['unit', 'taken_at', 'fire', 'state', 'fuel']);

/** What was put right in the given readings, as corrected, where their number rests on it. */
export function amended(
  { tables, changedBy }: CorrectionsResult,
  readings: readonly WorkedReading[],
): ReadonlyMap<WorkedReading, readonly string[]> {
  const { accepted } = tables;
  const [unit, fire, state, file] = ['unit', 'fire', 'state', 'source_file'].map((name) => textsOf(accepted, name));
  const line = numbersOf(accepted, 'source_line');
  const isOf = (row: number, reading: WorkedReading): boolean =>
    line[row] === reading.line &&
    textAt(file, row) === reading.file &&
    textAt(unit, row) === reading.unit &&
    textAt(fire, row) === reading.fire &&
    textAt(state, row) === reading.state;
  const bears = (correction: Correction, { fields }: WorkedReading): boolean =>
    correction.action !== 'change' || NAMING.has(correction.column) || fields.includes(correction.column);
  const found = new Map<WorkedReading, readonly string[]>();
  for (const reading of readings) {
    const told = [...changedBy].flatMap(([row, corrections]) =>
      isOf(row, reading) ? corrections.filter((correction) => bears(correction, reading)).map(signedCorrection) : [],
    );
    if (told.length > 0) found.set(reading, told);
  }
  return found;
}
