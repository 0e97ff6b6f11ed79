import type {
  CellContext,
  CellKind,
  CellName,
  CellResult,
  Inputs,
  Read,
  SourceFile,
  SourceKey,
} from '../../shared/cell.ts';
import * as say from '../../shared/messages/notebook.ts';
import { fail, type Outcome } from '../../shared/outcome.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import type { NodeId, NodeRead, NodeRun, NodeSpec } from '../engine/node.ts';
import { canonicalJson } from './canonical-json.ts';
import type { CellEntry, NotebookDocument } from './document.ts';
import { tooHeavy } from './too-heavy.ts';

/** A cell of the document with its kind and complete parameters, or the sentence that says why it has none. */
export interface PreparedCell {
  readonly entry: CellEntry;
  readonly kind: CellKind | undefined;
  readonly parameters: unknown;
  readonly reads: readonly CellName[];
  readonly fault: string;
}

export interface Host {
  readonly catalogue: ReadonlyMap<string, CellKind>;
  readonly files: ReadonlyMap<SourceKey, SourceFile>;
}

/** The id of the node that fits, where a cell has one. A cell's name cannot hold "#". */
export const fitNode = (cell: CellName): NodeId => `${cell}#fit`;
export const cellOfNode = (id: NodeId): CellName => (id.endsWith('#fit') ? id.slice(0, -4) : id);

export function prepareCell(entry: CellEntry, { catalogue }: Host): PreparedCell {
  const kind = catalogue.get(entry.kind);
  const nothing = { entry, kind, parameters: entry.parameters, reads: [] };
  if (!kind) return { ...nothing, fault: say.unknownKind(entry.name, entry.kind) };
  const heavy = tooHeavy(entry.name, entry.parameters);
  if (heavy) return { ...nothing, parameters: {}, fault: heavy };
  const read = kind.readParameters(entry.parameters);
  if (read.status !== 'value')
    return { ...nothing, fault: read.status === 'error' ? read.message : read.question.message };
  const all = [...(kind.fit?.reads(read.value) ?? []), ...kind.reads(read.value)];
  return { entry, kind, parameters: read.value, reads: [...new Set(all.map(({ cell }) => cell))], fault: '' };
}

/** The graph of a notebook: a node for each cell, and one before it for each fit. */
export function cellNodes(
  document: NotebookDocument,
  cells: readonly PreparedCell[],
  host: Host,
): NodeSpec<CellResult>[] {
  const setting = { asOf: readIsoDate(document.as_of), seed: document.settings.seed ?? 1 };
  return cells.flatMap((cell) => nodesOf(cell, setting, host));
}

interface Setting {
  readonly asOf: number;
  readonly seed: number;
}

function nodesOf(cell: PreparedCell, setting: Setting, host: Host): NodeSpec<CellResult>[] {
  const { entry, kind, parameters, fault } = cell;
  const id = entry.name;
  if (!kind || fault) return [{ id, key: `fault ${fault}`, reads: [], compute: () => fail(fault) }];
  const files = kind.sources(parameters).map((key) => [key, host.files.get(key)?.hash ?? 'missing']);
  const frame = [kind.name, setting.asOf, setting.seed, files];
  const { fit } = kind;
  const judge: NodeSpec<CellResult> = {
    id,
    key: canonicalJson([...frame, 'judge', parameters]),
    reads: [...kind.reads(parameters).map(nodeRead), ...(fit ? [{ node: fitNode(id) }] : [])],
    compute: (inputs, run) =>
      guarded(id, () =>
        kind.compute(
          parameters,
          cellInputs(kind.reads(parameters), inputs),
          context(run, setting, host),
          inputs.get(fitNode(id)),
        ),
      ),
  };
  if (!fit) return [judge];
  return [
    {
      id: fitNode(id),
      key: canonicalJson([...frame, 'fit', fit.parameters(parameters)]),
      reads: fit.reads(parameters).map(nodeRead),
      compute: (inputs, run) =>
        guarded(id, () =>
          fit.compute(parameters, cellInputs(fit.reads(parameters), inputs), context(run, setting, host)),
        ),
    },
    judge,
  ];
}

const nodeRead = ({ cell, tables }: Read): NodeRead => (tables ? { node: cell, parts: tables } : { node: cell });

/** A fault in a kind's code is told apart from an error that it foresaw. */
async function guarded(cell: CellName, compute: () => Promise<Outcome<CellResult>>): Promise<Outcome<CellResult>> {
  try {
    return await compute();
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === 'AbortError') throw cause;
    return fail(say.cellFault(cell, cause instanceof Error ? cause.message : String(cause)));
  }
}

function cellInputs(reads: readonly Read[], inputs: ReadonlyMap<NodeId, CellResult>): Inputs {
  return new Map(reads.map(({ cell }) => [cell, inputs.get(cell) as CellResult]));
}

function context(run: NodeRun, { asOf, seed }: Setting, { files }: Host): CellContext {
  return {
    asOf,
    seed,
    signal: run.signal,
    source: (key) => files.get(key),
    progress: (share) => run.progress(share),
    pause: () => run.pause(),
  };
}
