import type { Correction } from '../../../shared/corrections/correction.ts';
import { byEffect } from '../../../shared/corrections/order-of-effect.ts';
import { readCorrections } from '../../../shared/corrections/read-corrections.ts';
import { rowKeyText } from '../../../shared/corrections/row-key-text.ts';
import { readEventEntries } from '../../../shared/events/event-entry.ts';
import type { CellEntry } from '../document.ts';
import type { ValueMerger } from './merge-values.ts';

/**
 * Where each side put the same value of the same reading right in another way, the user says which counts; the other one
 * stays in the list, lifted off.
 */
export function settleCorrections(
  merger: ValueMerger,
  first: CellEntry,
  second: CellEntry,
  merged: CellEntry,
): CellEntry {
  const [one, other] = [first, second].map(effective);
  const lifted = new Set<string>();
  for (const [subject, mine] of one) {
    const theirs = other.get(subject);
    if (!theirs || theirs.id === mine.id) continue;
    if (has(first, theirs.id) || has(second, mine.id)) continue;
    const chosen = merger.settle(`cell ${merged.name}: ${subject}`, mine, theirs) as Correction;
    lifted.add(chosen.id === mine.id ? theirs.id : mine.id);
  }
  if (lifted.size === 0) return merged;
  const corrections = listOf(merged).map((entry) => (lifted.has(entry.id) ? { ...entry, lifted: true } : entry));
  return { ...merged, parameters: { ...merged.parameters, corrections } };
}

/** A cell of corrections or events whose entries all have their ids, so that they can be told apart. */
export function withIds(cell: CellEntry): CellEntry {
  if (cell.kind === 'events') return withEventIds(cell);
  const corrections = cell.kind === 'corrections' ? listOf(cell) : [];
  return corrections.length === 0 ? cell : { ...cell, parameters: { ...cell.parameters, corrections } };
}

/** Two cells whose common corrections have the later of their two turns in both. */
export function withLaterTurns(first: CellEntry, second: CellEntry): readonly [CellEntry, CellEntry] {
  if (first.kind !== 'corrections' || second.kind !== 'corrections') return [first, second];
  const [one, other] = [first, second].map((cell) => new Map(listOf(cell).map(({ id, turn }) => [id, turn])));
  const late = (cell: CellEntry): CellEntry => {
    const corrections = listOf(cell).map((entry) => ({
      ...entry,
      turn: Math.max(one.get(entry.id) ?? 1, other.get(entry.id) ?? 1),
    }));
    return corrections.length === 0 ? cell : { ...cell, parameters: { ...cell.parameters, corrections } };
  };
  return [late(first), late(second)];
}

function withEventIds(cell: CellEntry): CellEntry {
  const read = readEventEntries(cell.parameters['entries'] ?? []);
  if (read.status !== 'value' || read.value.length === 0) return cell;
  return { ...cell, parameters: { ...cell.parameters, entries: read.value } };
}

function listOf({ parameters }: CellEntry): readonly Correction[] {
  const read = readCorrections(parameters['corrections'] ?? []);
  return read.status === 'value' ? read.value : [];
}

const has = (cell: CellEntry, id: string): boolean => listOf(cell).some((entry) => entry.id === id);

/** The correction that counts, by what it is about. */
function effective(cell: CellEntry): Map<string, Correction> {
  const counting = new Map<string, Correction>();
  for (const correction of [...listOf(cell)].sort(byEffect))
    if (!correction.lifted) counting.set(subjectOf(correction), correction);
  return counting;
}

function subjectOf(correction: Correction): string {
  if ('row' in correction) {
    const of = correction.action === 'change' ? correction.column : 'whether it counts';
    return `${of} of ${rowKeyText(correction.row)}, reading ${correction.row.nth}`;
  }
  // Whole units are renamed one after the other; two of the same kind do not contradict each other.
  return correction.id;
}
