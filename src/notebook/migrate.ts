import { NOTEBOOK_VERSION } from './document.ts';

type Fields = Readonly<Record<string, unknown>>;

/** From each version to the next. A step may meet any field in any state: what it cannot read it hands on, to be refused later. */
const STEPS: Readonly<Record<number, (document: Fields) => Fields>> = {
  0: fromDrafts,
};

/** The document brought up to the current version. */
export function migrate(document: Fields, version: number): Fields {
  let migrated = document;
  for (let from = version; from < NOTEBOOK_VERSION; from++) migrated = { ...STEPS[from](migrated), version: from + 1 };
  return migrated;
}

/** Drafts before version 1 had no settings and no data list, and held a cell's parameters beside its name and kind. */
function fromDrafts(document: Fields): Fields {
  const cells = Array.isArray(document.cells) ? document.cells.map(separateParameters) : document.cells;
  return { ...document, settings: document.settings ?? {}, data: document.data ?? [], cells };
}

function separateParameters(cell: unknown): unknown {
  if (typeof cell !== 'object' || cell === null || Array.isArray(cell) || 'parameters' in cell) return cell;
  const { name, kind, ...parameters } = cell as Fields;
  return { name, kind, parameters };
}
