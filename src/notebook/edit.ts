import type { DataReference } from './document.ts';

/** A change of the notebook that can be named, undone and done again. */
export type Edit =
  | { readonly operation: 'set-parameter'; readonly cell: string; readonly parameter: string; readonly value: unknown }
  | {
      readonly operation: 'add-cell';
      readonly name: string;
      readonly kind: string;
      readonly parameters?: Readonly<Record<string, unknown>>;
      /** Position in the notebook, at the end where left out. */
      readonly at?: number;
    }
  | { readonly operation: 'remove-cell'; readonly cell: string }
  | { readonly operation: 'move-cell'; readonly cell: string; readonly to: number }
  | { readonly operation: 'rename-cell'; readonly cell: string; readonly to: string }
  /** A correction of the readings that a cell of kind readings (or corrections) gives; see shared/corrections. */
  | { readonly operation: 'correct'; readonly cell: string; readonly correction: unknown }
  | {
      readonly operation: 'lift-correction';
      readonly cell: string;
      readonly id: string;
      /** false lays it back on. */
      readonly lifted: boolean;
    }
  | { readonly operation: 'set-title'; readonly title: string }
  | { readonly operation: 'set-as-of'; readonly asOf: string }
  | { readonly operation: 'set-setting'; readonly setting: string; readonly value: unknown }
  | { readonly operation: 'add-data'; readonly data: readonly DataReference[] }
  | { readonly operation: 'remove-data'; readonly key: string };
