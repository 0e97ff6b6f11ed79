import * as say from '../../../shared/messages/merge.ts';
import { fail, type Outcome, succeed } from '../../../shared/outcome.ts';
import { canonicalJson } from '../canonical-json.ts';
import type { CellEntry, NotebookDocument } from '../document.ts';
import type { Conflict, Resolve } from './conflict.ts';
import { mergeOrder } from './merge-order.ts';
import { ValueMerger } from './merge-values.ts';
import { settleCorrections, withIds, withLaterTurns } from './settle-corrections.ts';
import { uniteEmbedded } from './unite-embedded.ts';

export interface Merged {
  /** Complete only where no conflict is left. */
  readonly document: NotebookDocument;
  readonly conflicts: readonly Conflict[];
}

/**
 * Two notebooks of one fleet as one: corrections, events, visits, outcomes and files by identity, everything else where
 * only one of them has it or both agree. Whichever comes first, the result is the same; merged again, it stays.
 */
export function mergeDocuments(
  first: NotebookDocument,
  second: NotebookDocument,
  resolve: Resolve = () => undefined,
): Outcome<Merged> {
  if (!sameFleet(first, second)) return fail(say.differentFleets(first.title, second.title));
  const merger = new ValueMerger(resolve);
  const { format, version } = first;
  const { cells: _, as_of: __, ...rest } = first;
  const { cells: ___, as_of: ____, ...other } = second;
  const [data, otherData] = uniteEmbedded(first.data, second.data);
  const fields = merger.mergeFields('notebook', { ...rest, data }, { ...other, data: otherData }) as typeof rest;
  const [, as_of] = [first.as_of, second.as_of].sort();
  const cells = mergeCells(merger, first.cells, second.cells);
  const document = inUsualOrder({ ...fields, format, version, as_of, cells });
  const conflicts = merger.conflicts.sort((a, b) => (a.place < b.place ? -1 : 1));
  return succeed({ document, conflicts });
}

/** Notebooks of one fleet have at least one data file in common, or no data at all yet. */
function sameFleet(first: NotebookDocument, second: NotebookDocument): boolean {
  const hashes = new Set(first.data.map(({ hash }) => hash).filter((hash) => hash !== ''));
  return first.data.length === 0 || second.data.length === 0 || second.data.some(({ hash }) => hashes.has(hash));
}

function mergeCells(merger: ValueMerger, first: readonly CellEntry[], second: readonly CellEntry[]): CellEntry[] {
  const [one, other] = [first, second].map((list) => new Map(list.map((cell) => [cell.name, withIds(cell)])));
  const merged = (name: string): CellEntry => {
    const [mine, theirs] = [one.get(name), other.get(name)];
    if (!mine || !theirs) return (mine ?? theirs) as CellEntry;
    const [a, b] = withLaterTurns(mine, theirs);
    if (a.kind !== b.kind) return merger.settle(`cell ${name}`, a, b) as CellEntry;
    const cell = merger.merge(`cell ${name}`, a, b) as CellEntry;
    return a.kind === 'corrections' ? settleCorrections(merger, a, b, cell) : cell;
  };
  return orderOfCells(merger, [...one.keys()], [...other.keys()]).map(merged);
}

function orderOfCells(merger: ValueMerger, first: readonly string[], second: readonly string[]): readonly string[] {
  const agreed = mergeOrder(first, second);
  if (agreed) return agreed;
  const led = merger.settle('order of the cells', first, second) as readonly string[];
  return [...led, ...[...first, ...second].filter((name) => !led.includes(name)).sort()].filter(
    (name, at, all) => all.indexOf(name) === at,
  );
}

const USUAL = ['format', 'version', 'title', 'as_of', 'settings', 'data', 'cells'];

/** Fields in the order in which notebooks are written; unknown ones behind, by name. */
function inUsualOrder(document: NotebookDocument): NotebookDocument {
  const others = Object.keys(document)
    .filter((name) => !USUAL.includes(name))
    .sort();
  return Object.fromEntries([...USUAL, ...others].map((name) => [name, document[name]])) as NotebookDocument;
}

/** Whether two documents say the same, whatever the order of their fields. */
export function sameDocument(first: NotebookDocument, second: NotebookDocument): boolean {
  return canonicalJson(first) === canonicalJson(second);
}
