import type { CellKind, CellResult, SourceFile, SourceKey } from '../../shared/cell.ts';
import { cannotWork, noResult } from '../../shared/messages/working.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { findSource } from '../../shared/sources/find-source.ts';
import type { ShownReading, ShownSource, ShownWorking } from '../../shared/working/shown-working.ts';
import type { WorkedReading } from '../../shared/working/worked-reading.ts';
import type { NumberPlace, WorkingStep } from '../../shared/working/working.ts';

interface WorkingCell {
  readonly kind: CellKind;
  readonly result: CellResult | undefined;
  readonly reads: readonly string[];
}

/** What showing a working needs of the notebook. */
export interface WorkingHost {
  /** Every cell that could be begun, with its last good result where it has one. */
  readonly cells: ReadonlyMap<string, WorkingCell>;
  readonly files: ReadonlyMap<SourceKey, SourceFile>;
}

/** How one number of a cell came about: its chain, its budget, its sources in full. The files are not opened. */
export function showWorking(place: NumberPlace, { cells }: WorkingHost): Outcome<ShownWorking> {
  const { kind, result } = cells.get(place.cell) ?? {};
  if (!kind?.working) return fail(cannotWork(place.cell));
  if (!result) return fail(noResult(place.cell));
  const found = kind.working(result, place.column, place.row);
  if (found.status !== 'value') return found;
  const { readings, ...working } = found.value;
  const amended = amendmentsOf(readings, place.cell, cells);
  return succeed({
    ...working,
    place,
    readings: readings.map((reading) => ({ ...reading, origin: undefined, amended: amended.get(reading) ?? [] })),
    sources: sourcesOf(working.steps),
  });
}

/** The same with what the files say, each file read once for all of its readings. */
export async function withOrigins(working: ShownWorking, { cells, files }: WorkingHost): Promise<ShownWorking> {
  const byName = new Map([...files.values()].map((file) => [file.name, file]));
  let readings: readonly ShownReading[] = working.readings;
  for (const { kind, result } of cells.values()) {
    if (!kind.origins || !result || readings.every(({ origin }) => origin)) continue;
    const found = await kind.origins(result, readings, (name) => byName.get(name));
    readings = readings.map((reading) => ({ ...reading, origin: reading.origin ?? found.get(reading) }));
  }
  return { ...working, readings };
}

/** What the cells on the way from the files to the number have put right in its readings. */
function amendmentsOf(
  readings: readonly WorkedReading[],
  from: string,
  cells: WorkingHost['cells'],
): ReadonlyMap<WorkedReading, readonly string[]> {
  const amended = new Map<WorkedReading, readonly string[]>();
  const seen = new Set<string>();
  const open = [from];
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    const cell = cells.get(name);
    if (!cell || seen.has(name)) continue;
    seen.add(name);
    open.push(...cell.reads);
    if (!cell.kind.amended || !cell.result) continue;
    // Those nearer to the file come first.
    for (const [reading, told] of cell.kind.amended(cell.result, readings))
      amended.set(reading, [...told, ...(amended.get(reading) ?? [])]);
  }
  return amended;
}

/** Each source once, in the order in which the chain names them. */
function sourcesOf(steps: readonly WorkingStep[]): readonly ShownSource[] {
  return [...new Set(steps.map(({ source }) => source))].flatMap((key) => {
    const found = findSource(key);
    return found ? [{ key, ...found }] : [];
  });
}
