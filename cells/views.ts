import type { CellView } from './parts/view.ts';

const modules = import.meta.glob<{ view: CellView }>('./*/view.ts');

/** The view of each kind, loaded when first drawn; browser only. */
export const views: ReadonlyMap<string, () => Promise<CellView>> = new Map(
  Object.entries(modules).map(([path, load]) => [path.split('/')[1], async () => (await load()).view]),
);
