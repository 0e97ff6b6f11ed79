import * as say from '../../../shared/messages/merge.ts';
import { canonicalJson } from '../canonical-json.ts';
import type { CellEntry, NotebookDocument } from '../document.ts';

/** What was decided otherwise in the second notebook, one line each, in the order in which it stands there. */
export function compareDocuments(before: NotebookDocument, after: NotebookDocument): readonly string[] {
  const old = new Map(before.cells.map((cell) => [cell.name, cell]));
  const now = new Map(after.cells.map((cell) => [cell.name, cell]));
  const lines: string[] = [];
  for (const field of fieldsOf(before, after)) {
    const [was, is] = [before[field], after[field]];
    if (canonicalJson(was) !== canonicalJson(is)) lines.push(say.fieldChanged(field, shown(was), shown(is)));
  }
  for (const cell of before.cells) if (!now.has(cell.name)) lines.push(say.cellRemoved(cell.name, cell.kind));
  for (const cell of after.cells) {
    const was = old.get(cell.name);
    if (was?.kind !== cell.kind) {
      if (was) lines.push(say.cellRemoved(was.name, was.kind));
      lines.push(say.cellAdded(cell.name, cell.kind));
    } else lines.push(...parametersChanged(was, cell));
  }
  return lines;
}

function parametersChanged(before: CellEntry, { name, parameters }: CellEntry): string[] {
  const names = [...new Set([...Object.keys(before.parameters), ...Object.keys(parameters)])];
  return names.flatMap((parameter) => {
    const [was, is] = [before.parameters[parameter], parameters[parameter]];
    return canonicalJson(was) === canonicalJson(is)
      ? []
      : [say.parameterChanged(name, parameter, shown(was), shown(is))];
  });
}

function fieldsOf(before: NotebookDocument, after: NotebookDocument): string[] {
  return [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((field) => field !== 'cells');
}

const shown = (value: unknown): string =>
  value === undefined ? 'not given' : typeof value === 'string' ? value : JSON.stringify(value);
