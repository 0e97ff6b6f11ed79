import type { CellKind, SourceFile, SourceKey } from '../../shared/cell.ts';
import { raisedChanges } from '../../shared/limits/raised-changes.ts';
import { notCalculated } from '../../shared/messages/two-notebooks.ts';
import type { Table } from '../../shared/table/table.ts';
import { compareDocuments, type ReadParameter } from '../notebook/compare/compare-documents.ts';
import type { NotebookDocument } from '../notebook/document.ts';
import { Session, type SessionOptions } from '../notebook/session.ts';
import type { Comparison } from './protocol.ts';

/** Enough for one calculation; nothing of it is asked twice. */
const LIMIT_BYTES = 64 * 2 ** 20;

export interface Compared {
  readonly document: NotebookDocument;
  readonly files: ReadonlyMap<SourceKey, SourceFile>;
}

/** What was decided otherwise in the second notebook, and which units that raises or clears. Calculates both. */
export async function compareNotebooks(
  before: Compared,
  after: Compared,
  catalogue: ReadonlyMap<string, CellKind>,
  options: SessionOptions,
): Promise<Comparison> {
  const decided = compareDocuments(before.document, after.document, readParameterBy(catalogue));
  const lists: Table[] = [];
  for (const { document, files } of [before, after]) {
    const raised = await raisedBy(document, files, catalogue, options);
    if (!raised) return { decided, changes: undefined, fault: notCalculated(document.title) };
    lists.push(raised);
  }
  return { decided, changes: raisedChanges(lists[0], lists[1]), fault: '' };
}

/** The files that a notebook names, of those at hand: the same content under any name, else the same name. */
export function filesAtHand(
  { data }: NotebookDocument,
  atHand: ReadonlyMap<SourceKey, SourceFile>,
): Map<SourceKey, SourceFile> {
  const byHash = new Map([...atHand.values()].map((file) => [file.hash, file]));
  return new Map(
    data.flatMap(({ key, hash }) => {
      const file = byHash.get(hash) ?? atHand.get(key);
      return file ? [[key, file] as const] : [];
    }),
  );
}

async function raisedBy(
  document: NotebookDocument,
  files: ReadonlyMap<SourceKey, SourceFile>,
  catalogue: ReadonlyMap<string, CellKind>,
  options: SessionOptions,
): Promise<Table | undefined> {
  const session = new Session(catalogue, { ...options, limitBytes: LIMIT_BYTES });
  session.open(document, files);
  await session.calculate();
  const raising = session.states().find(({ kind, phase }) => kind === 'raise' && phase === 'done');
  return raising && session.result(raising.name)?.tables['raised'];
}

/** Parameters in the words of their cell's sentence. */
function readParameterBy(catalogue: ReadonlyMap<string, CellKind>): ReadParameter {
  return ({ kind: name, parameters: raw }, parameter) => {
    const kind = catalogue.get(name);
    const read = kind?.readParameters(raw);
    if (!kind || read?.status !== 'value') return undefined;
    const segments = [...kind.sentence(read.value), ...(kind.details?.(read.value) ?? [])];
    for (const segment of segments) if (typeof segment !== 'string' && segment.parameter === parameter) return segment;
    return undefined;
  };
}
