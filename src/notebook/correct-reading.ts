import type { CellKind } from '../../shared/cell.ts';
import type { Correction } from '../../shared/corrections/correction.ts';
import { nextTurn } from '../../shared/corrections/order-of-effect.ts';
import { readCorrection, readCorrections } from '../../shared/corrections/read-corrections.ts';
import * as say from '../../shared/messages/notebook.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import type { CellEntry, NotebookDocument } from './document.ts';
import { renameReads } from './rename-reads.ts';

type Catalogue = ReadonlyMap<string, CellKind>;

const KIND = 'corrections';

/**
 * The document with one more correction of the given cell's readings. The first one brings its cell with it: it is put
 * behind the readings, and whoever read the readings then reads it instead.
 */
export function correctReading(
  document: NotebookDocument,
  cell: string,
  raw: unknown,
  catalogue: Catalogue,
): Outcome<NotebookDocument> {
  const correction = readCorrection(raw, 1);
  if (typeof correction === 'string') return fail(correction);
  const target = document.cells.find(({ name }) => name === cell);
  if (!target) return fail(say.noSuchCell(cell));
  if (target.kind === KIND) return withCorrection(document, target, correction);
  const layer = document.cells.find(({ kind, parameters }) => kind === KIND && parameters['readings'] === cell);
  return layer ? withCorrection(document, layer, correction) : withLayer(document, target, correction, catalogue);
}

/** Lifts a correction off, or lays it back on. */
export function liftCorrection(
  document: NotebookDocument,
  cell: string,
  id: string,
  lifted: boolean,
): Outcome<NotebookDocument> {
  const layer = document.cells.find(({ name, kind }) => name === cell && kind === KIND);
  if (!layer) return fail(say.noSuchCell(cell));
  const read = correctionsOf(layer);
  if (read.status !== 'value') return read;
  const list = read.value;
  if (!list.some((entry) => entry.id === id)) return fail(say.noSuchCorrection(cell, id));
  return succeed(
    replaced(
      document,
      layer,
      list.map((entry) => (entry.id === id ? { ...entry, lifted } : entry)),
    ),
  );
}

function withCorrection(
  document: NotebookDocument,
  layer: CellEntry,
  correction: Correction,
): Outcome<NotebookDocument> {
  const read = correctionsOf(layer);
  if (read.status !== 'value') return read;
  // The same correction made again is the one that is there, back on where it was lifted off; it counts from now on.
  const others = read.value.filter(({ id }) => id !== correction.id);
  const turn = nextTurn(correction.made_on, others);
  return succeed(replaced(document, layer, [...others, { ...correction, turn }]));
}

function withLayer(
  document: NotebookDocument,
  target: CellEntry,
  correction: Correction,
  catalogue: Catalogue,
): Outcome<NotebookDocument> {
  if (!catalogue.has(KIND)) return fail(say.noSuchKind(KIND));
  const name = freeName(document);
  const layer: CellEntry = { name, kind: KIND, parameters: { readings: target.name, corrections: [correction] } };
  const cells = document.cells.flatMap((entry) => {
    const follower = renameReads(entry, target.name, name, catalogue.get(entry.kind));
    return entry === target ? [entry, layer] : [follower];
  });
  return succeed({ ...document, cells });
}

function freeName({ cells }: NotebookDocument): string {
  const taken = new Set(cells.map(({ name }) => name));
  let name = KIND;
  for (let count = 2; taken.has(name); count++) name = `${KIND}-${count}`;
  return name;
}

/** The layer's list. One that cannot be read keeps its cell from calculating, and is not touched. */
function correctionsOf({ parameters }: CellEntry): Outcome<readonly Correction[]> {
  return readCorrections(parameters['corrections'] ?? []);
}

function replaced(document: NotebookDocument, layer: CellEntry, corrections: readonly Correction[]): NotebookDocument {
  const changed = { ...layer, parameters: { ...layer.parameters, corrections } };
  return { ...document, cells: document.cells.map((entry) => (entry === layer ? changed : entry)) };
}
