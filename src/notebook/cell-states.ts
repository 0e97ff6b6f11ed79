import type { CellResult, Description, Segment } from '../../shared/cell.ts';
import type { CellState } from '../../shared/cell-state.ts';
import * as why from '../../shared/messages/engine.ts';
import * as say from '../../shared/messages/notebook.ts';
import type { NodeState } from '../engine/graph-node.ts';
import type { Reason } from '../engine/node.ts';
import { cellOfNode, type PreparedCell } from './cell-nodes.ts';

/** A result described once, however often its state is asked for. */
export interface DescribedResult {
  readonly result: CellResult;
  readonly description: Description;
  readonly rows: Readonly<Record<string, number>>;
}

type State = NodeState<CellResult> | undefined;

/** What the page knows of a cell: its own node's state, or its fit's where that is running, failed or asking. */
export function cellState(
  cell: PreparedCell,
  judged: State,
  fitted: State,
  before: DescribedResult | undefined,
  changes: readonly string[],
): { readonly state: CellState; readonly described: DescribedResult | undefined } {
  const { entry, kind, parameters, reads } = cell;
  const deciding = decidingState(judged, fitted);
  const described = judged?.value ? describeOnce(cell, judged.value, before) : undefined;
  const state: CellState = {
    name: entry.name,
    kind: entry.kind,
    title: kind?.title ?? entry.kind,
    parameters,
    sentence: sentenceOf(cell),
    details: detailsOf(cell),
    reads,
    phase: deciding?.phase ?? 'idle',
    progress: deciding?.progress ?? 0,
    description: described?.description,
    stale:
      (judged?.value !== undefined && (deciding?.stale || deciding !== judged) && deciding?.phase !== 'running') ??
      false,
    message: messageOf(entry.name, deciding),
    question: deciding?.question,
    waitsFor: [...new Set(deciding?.waitsFor.map(cellOfNode))],
    rows: described?.rows ?? {},
    why: whyOf(judged, fitted, changes),
    version: judged?.version ?? 0,
  };
  return { state, described };
}

function decidingState(judged: State, fitted: State): State {
  if (!fitted || fitted.phase === 'done' || fitted.phase === 'idle') return judged;
  return fitted;
}

function describeOnce(
  { entry, kind }: PreparedCell,
  result: CellResult,
  before: DescribedResult | undefined,
): DescribedResult {
  if (before?.result === result) return before;
  const rows = Object.fromEntries(Object.entries(result.tables).map(([name, table]) => [name, table.rows]));
  try {
    return { result, rows, description: (kind as NonNullable<typeof kind>).describe(result) };
  } catch (cause) {
    const answer = say.cellFault(entry.name, cause instanceof Error ? cause.message : String(cause));
    return { result, rows, description: { answer, tables: [], figures: [], remarks: [] } };
  }
}

function sentenceOf({ kind, parameters, fault }: PreparedCell): readonly Segment[] {
  if (!kind || fault) return [];
  try {
    return kind.sentence(parameters);
  } catch {
    return [kind.purpose];
  }
}

function detailsOf({ kind, parameters, fault }: PreparedCell): readonly Segment[] {
  if (!kind || fault) return [];
  try {
    return kind.details?.(parameters) ?? [];
  } catch {
    return [];
  }
}

function messageOf(cell: string, state: State): string {
  if (!state) return '';
  if (state.reason.kind === 'cycle') return why.cyclePath(state.reason.path.map(cellOfNode));
  if (state.reason.kind === 'missing') return why.missingCell(cell, state.reason.node);
  return state.message;
}

/** Reasons of a node that was really calculated. */
const CALCULATED: ReadonlySet<Reason['kind']> = new Set<Reason['kind']>(['first', 'own', 'reads', 'let-go']);

function whyOf(judged: State, fitted: State, changes: readonly string[]): string {
  if (!judged) return why.neverCalculated();
  if (!fitted) return sentence(judged.reason, changes);
  const fitRan = CALCULATED.has(fitted.reason.kind);
  if (fitRan || judged.reason.kind === 'waits') return sentence(fitted.reason, changes);
  const judgedAgain = CALCULATED.has(judged.reason.kind);
  return judgedAgain ? why.judgedAgain(sentence(judged.reason, changes)) : sentence(judged.reason, changes);
}

function sentence(reason: Reason, changes: readonly string[]): string {
  const cells = (nodes: readonly string[]): string[] => [...new Set(nodes.map(cellOfNode))];
  switch (reason.kind) {
    case 'never':
      return why.neverCalculated();
    case 'first':
      return why.calculatedFirst();
    case 'own':
      return why.calculatedForParameters(changes);
    case 'reads':
      return why.calculatedForReads(cells(reason.nodes));
    case 'kept':
      return why.takenFromStore();
    case 'let-go':
      return why.calculatedSinceLetGo();
    case 'untouched':
      return why.nothingChanged();
    case 'equal':
      return why.cameOutEqual(cells(reason.nodes));
    case 'waits':
      return why.waitsFor(cells(reason.nodes));
    case 'missing':
      return why.missingCell('This cell', cellOfNode(reason.node));
    case 'cycle':
      return why.cyclePath(reason.path.map(cellOfNode));
  }
}
