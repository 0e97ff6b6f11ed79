import type { CellKind } from '../../shared/cell.ts';
import type { CellEntry } from './document.ts';

/**
 * The cell with every parameter that names `from` naming `to`. Which parameters name cells is found by trying: only where
 * the kind then reads `to` instead of `from` was the text a cell's name, so a note that mentions the word stays as it is.
 * A default that names the renamed cell is written out, so that the reader follows.
 */
export function renameReads(cell: CellEntry, from: string, to: string, kind: CellKind | undefined): CellEntry {
  const read = kind?.readParameters(cell.parameters);
  if (!kind || read?.status !== 'value') return cell;
  const complete = read.value as Readonly<Record<string, unknown>>;
  let parameters = cell.parameters;
  for (const name of Object.keys(complete)) {
    const renamed = replaceText(complete[name], from, to);
    if (renamed === complete[name]) continue;
    const tried = kind.readParameters({ ...complete, [name]: renamed });
    if (tried.status !== 'value') continue;
    if (countReads(kind, tried.value, from) < countReads(kind, complete, from))
      parameters = { ...parameters, [name]: renamed };
  }
  return parameters === cell.parameters ? cell : { ...cell, parameters };
}

function countReads(kind: CellKind, parameters: unknown, name: string): number {
  const all = [...kind.reads(parameters), ...(kind.fit?.reads(parameters) ?? [])];
  return all.filter(({ cell }) => cell === name).length;
}

/** Replaces the text itself or, in a list, the items equal to it. */
function replaceText(value: unknown, from: string, to: string): unknown {
  if (value === from) return to;
  if (Array.isArray(value) && value.includes(from)) return value.map((item) => (item === from ? to : item));
  return value;
}
