import type { ColumnMapping } from './mapping.ts';

/** Where a column stands and what it is called. */
export type Place = Pick<ColumnMapping, 'index' | 'head' | 'key'>;

/** A column that is not read, and why. */
export const unused = ({ index, head, key }: Place, reason: string): ColumnMapping => ({
  index,
  head,
  key,
  field: '',
  unit: '',
  fire: '',
  state: '',
  confidence: 0,
  reason,
});
