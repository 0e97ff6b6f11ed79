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
import { replayName } from '../../shared/replays.ts';
import { DEFAULT_SETTINGS, type Settings } from '../../shared/settings.ts';
import type { NodeId, NodeRead, NodeRun, NodeSpec } from '../engine/node.ts';
import { canonicalJson } from './canonical-json.ts';
import type { HelperPool } from './crews/helper-pool.ts';
import type { CellEntry, NotebookDocument } from './document.ts';
import { documentSettings } from './document-settings.ts';
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
  readonly helpers?: HelperPool | undefined;
}

/** The id of the node that fits, where a cell has one. A cell's name cannot hold "#" or "@". */
export const fitNode = (id: NodeId): NodeId => `${id}#fit`;
export const cellOfNode = (id: NodeId): CellName => id.replace(/(@-?\d+)?(#fit)?$/, '');

export function prepareCell(entry: CellEntry, { catalogue }: Host): PreparedCell {
  const kind = catalogue.get(entry.kind);
  const nothing = { entry, kind, parameters: entry.parameters, reads: [] };
  if (!kind) return { ...nothing, fault: say.unknownKind(entry.name, entry.kind) };
  const heavy = tooHeavy(entry.name, entry.parameters);
  if (heavy) return { ...nothing, parameters: {}, fault: heavy };
  const read = kind.readParameters(entry.parameters);
  if (read.status !== 'value')
    return { ...nothing, fault: read.status === 'error' ? read.message : read.question.message };
  const all = [...(kind.fit?.reads(read.value) ?? []), ...kind.reads(read.value)].map(({ cell }) => cell);
  // Which cells are replayed does not depend on the day, only how often they are.
  const replayed = kind.replays?.(read.value, 0).cells ?? [];
  return { entry, kind, parameters: read.value, reads: [...new Set([...all, ...replayed])], fault: '' };
}

/** The graph of a notebook: a node for each cell, one before it for each fit, and those of the past days asked for. */
export function cellNodes(
  document: NotebookDocument,
  cells: readonly PreparedCell[],
  host: Host,
): NodeSpec<CellResult>[] {
  const present: Setting = {
    asOf: readIsoDate(document.as_of),
    seed: document.settings.seed ?? 1,
    settings: documentSettings(document),
    replayed: new Set(),
  };
  return [...replayNodes(cells, present, host), ...cells.flatMap((cell) => nodesOf(cell, present, host))];
}

interface Setting {
  readonly asOf: number;
  readonly seed: number;
  readonly settings: Settings;
  /** Cells that are calculated as of `asOf` beside the present ones; empty for the present itself. */
  readonly replayed: ReadonlySet<CellName>;
}

/** Every replay once, however many cells ask for it. */
function replayNodes(cells: readonly PreparedCell[], present: Setting, host: Host): NodeSpec<CellResult>[] {
  const byName = new Map(cells.map((cell) => [cell.entry.name, cell]));
  const nodes = new Map<NodeId, NodeSpec<CellResult>>();
  for (const asking of cells) {
    if (asking.fault || !asking.kind?.replays) continue;
    const { cells: names, days } = asking.kind.replays(asking.parameters, present.asOf);
    for (const asOf of days)
      for (const cell of names.flatMap((name) => byName.get(name) ?? []))
        for (const node of nodesOf(cell, { ...present, asOf, replayed: new Set(names) }, host))
          nodes.set(node.id, node);
  }
  return [...nodes.values()];
}

function nodesOf(cell: PreparedCell, setting: Setting, host: Host): NodeSpec<CellResult>[] {
  const { entry, kind, parameters, fault } = cell;
  const id = nodeName(entry.name, setting);
  if (!kind || fault) return [{ id, key: `fault ${fault}`, reads: [], compute: () => fail(fault) }];
  const files = kind.sources(parameters).map((key) => [key, host.files.get(key)?.hash ?? 'missing']);
  const chosen = Object.fromEntries((kind.settings ?? []).map((name) => [name, setting.settings[name]]));
  const frame = [kind.name, setting.asOf, setting.seed, files, chosen];
  const { fit } = kind;
  const reads = joined(kind.reads(parameters), setting);
  const replays = setting.replayed.size > 0 ? [] : replayReads(kind, parameters, setting);
  const judge: NodeSpec<CellResult> = {
    id,
    key: canonicalJson([...frame, 'judge', parameters]),
    reads: [...reads.values(), ...replays, ...(fit ? [{ node: fitNode(id) }] : [])],
    compute: (inputs, run) =>
      guarded(entry.name, () => {
        const named = new Map([
          ...cellInputs(reads, inputs),
          ...replays.map(({ node }) => [node, inputs.get(node) as CellResult] as const),
        ]);
        return kind.compute(parameters, named, context(kind, run, setting, host), inputs.get(fitNode(id)));
      }),
  };
  if (!fit) return [judge];
  const fitReads = joined(fit.reads(parameters), setting);
  const before: NodeSpec<CellResult> = {
    id: fitNode(id),
    key: canonicalJson([...frame, 'fit', fit.parameters(parameters)]),
    reads: [...fitReads.values()],
    compute: (inputs, run) =>
      guarded(entry.name, () =>
        fit.compute(parameters, cellInputs(fitReads, inputs), context(kind, run, setting, host)),
      ),
  };
  return [before, judge];
}

const nodeName = (cell: CellName, { asOf, replayed }: Setting): NodeId =>
  replayed.has(cell) ? replayName(cell, asOf) : cell;

function replayReads(kind: CellKind, parameters: unknown, { asOf }: Setting): NodeRead[] {
  const { cells, days } = kind.replays?.(parameters, asOf) ?? { cells: [], days: [] };
  return days.flatMap((day) => cells.map((cell) => ({ node: replayName(cell, day) })));
}

/** By cell: the node to read for it. A cell read twice is read once, with the tables of both. */
function joined(reads: readonly Read[], setting: Setting): Map<CellName, NodeRead> {
  const result = new Map<CellName, NodeRead>();
  for (const { cell, tables, optional } of reads) {
    const before = result.get(cell);
    const node = nodeName(cell, setting);
    const waits = optional && (!before || before.optional) ? ({ optional } as const) : {};
    if (tables && (!before || before.parts))
      result.set(cell, { node, parts: [...new Set([...(before?.parts ?? []), ...tables])], ...waits });
    else result.set(cell, { node, ...waits });
  }
  return result;
}

/** A fault in a kind's code is told apart from an error that it foresaw. */
async function guarded(cell: CellName, compute: () => Promise<Outcome<CellResult>>): Promise<Outcome<CellResult>> {
  try {
    return await compute();
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === 'AbortError') throw cause;
    return fail(say.cellFault(cell, cause instanceof Error ? cause.message : String(cause)));
  }
}

function cellInputs(reads: ReadonlyMap<CellName, NodeRead>, inputs: ReadonlyMap<NodeId, CellResult>): Inputs {
  return new Map(
    [...reads].flatMap(([cell, { node }]) => {
      const result = inputs.get(node);
      return result ? [[cell, result] as const] : [];
    }),
  );
}

function context(
  { name, settings: listed = [] }: CellKind,
  run: NodeRun,
  { asOf, seed, settings }: Setting,
  { files, helpers }: Host,
): CellContext {
  const { signal } = run;
  const own = Object.fromEntries(listed.map((setting) => [setting, settings[setting]]));
  return {
    asOf,
    seed,
    settings: { ...DEFAULT_SETTINGS, ...own },
    signal,
    source: (key) => files.get(key),
    progress: (share) => run.progress(share),
    pause: () => run.pause(),
    ...(helpers && { helpers: async (work, shards) => helpers.enlist(name, work, shards, signal) }),
  };
}
