import * as say from '../../../shared/messages/merge.ts';
import { canonicalJson } from '../canonical-json.ts';
import type { CellEntry, DataReference, NotebookDocument } from '../document.ts';
import { ownField } from '../own-field.ts';
import { compareCorrections } from './compare-corrections.ts';

/** How people read a parameter of a cell: what it is called and what it is set to. Undefined where it has no words. */
export type ReadParameter = (
  cell: CellEntry,
  parameter: string,
) => { readonly label: string; readonly text: string } | undefined;

/** What was decided otherwise in the second notebook, one line each, in the order in which it stands there. */
export function compareDocuments(
  before: NotebookDocument,
  after: NotebookDocument,
  read: ReadParameter = () => undefined,
): readonly string[] {
  const old = new Map(before.cells.map((cell) => [cell.name, cell]));
  const now = new Map(after.cells.map((cell) => [cell.name, cell]));
  const lines: string[] = [];
  for (const field of fieldsOf(before, after)) {
    const [was, is] = [ownField(before, field), ownField(after, field)];
    if (canonicalJson(was) !== canonicalJson(is)) lines.push(say.fieldChanged(field, shown(was), shown(is)));
  }
  lines.push(...dataChanged(before.data, after.data));
  for (const cell of before.cells) if (!now.has(cell.name)) lines.push(say.cellRemoved(cell.name, cell.kind));
  for (const cell of after.cells) {
    const was = old.get(cell.name);
    if (was?.kind === cell.kind) {
      lines.push(...parametersChanged(was, cell, read), ...compareCorrections(was, cell));
      continue;
    }
    if (was) lines.push(say.cellRemoved(was.name, was.kind));
    lines.push(say.cellAdded(cell.name, cell.kind), ...compareCorrections(undefined, cell));
  }
  return lines;
}

function parametersChanged(before: CellEntry, after: CellEntry, read: ReadParameter): string[] {
  const names = [...new Set([...Object.keys(before.parameters), ...Object.keys(after.parameters)])];
  return names.flatMap((parameter) => {
    if (after.kind === 'corrections' && parameter === 'corrections') return [];
    const [was, is] = [ownField(before.parameters, parameter), ownField(after.parameters, parameter)];
    if (canonicalJson(was) === canonicalJson(is)) return [];
    const [wasRead, isRead] = [read(before, parameter), read(after, parameter)];
    const label = isRead?.label ?? wasRead?.label ?? parameter;
    return [say.parameterChanged(after.name, label, wasRead?.text ?? shown(was), isRead?.text ?? shown(is))];
  });
}

function dataChanged(before: readonly DataReference[], after: readonly DataReference[]): string[] {
  const [old, now] = [before, after].map((list) => new Map(list.map((entry) => [entry.key, entry])));
  const lines = after.flatMap(({ key, hash }) => {
    const was = old.get(key);
    if (!was) return [say.dataAdded(key)];
    return was.hash === hash || was.hash === '' || hash === '' ? [] : [say.dataChanged(key)];
  });
  return [...lines, ...before.flatMap(({ key }) => (now.has(key) ? [] : [say.dataRemoved(key)]))];
}

/** Cells and data have words of their own. */
function fieldsOf(before: NotebookDocument, after: NotebookDocument): string[] {
  const told = ['cells', 'data'];
  return [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((field) => !told.includes(field));
}

const shown = (value: unknown): string =>
  value === undefined ? 'not given' : typeof value === 'string' ? value : JSON.stringify(value);
