import type { CellKind } from '../shared/cell.ts';

const modules = import.meta.glob<{ kind: CellKind }>('./*/kind.ts', { eager: true });

/** Every kind of cell, by name. A folder with a kind.ts is in; nothing is registered by hand. */
export const catalogue: ReadonlyMap<string, CellKind> = new Map(
  Object.values(modules)
    .map(({ kind }) => [kind.name, kind] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1)),
);
