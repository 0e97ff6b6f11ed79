import type { SourceFile } from '../../shared/cell.ts';
import { originsOfReadings } from '../../shared/readings/origins-of-readings.ts';
import type { ReadingOrigin } from '../../shared/working/reading-origin.ts';
import type { WorkedReading } from '../../shared/working/worked-reading.ts';
import type { ReadingsResult } from './compute.ts';

/** Readings as they stand in the files of this cell; each file is opened once. */
export async function origins(
  { plans }: ReadingsResult,
  readings: readonly WorkedReading[],
  source: (file: string) => SourceFile | undefined,
): Promise<ReadonlyMap<WorkedReading, ReadingOrigin>> {
  const found = new Map<WorkedReading, ReadingOrigin>();
  for (const plan of plans) {
    const inFile = readings.filter(({ file, line }) => file === plan.file && Number.isFinite(line));
    const file = inFile.length > 0 ? source(plan.file) : undefined;
    if (!file) continue;
    for (const [reading, origin] of await originsOfReadings(file, plan, inFile)) found.set(reading, origin);
  }
  return found;
}
