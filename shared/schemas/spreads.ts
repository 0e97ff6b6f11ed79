import { numeric, type Schema, text } from '../table/schema.ts';

/** Standard uncertainties of what instruments show: the larger of an absolute and a relative part, in the quantity's unit. */
export const spreadsSchema: Schema = [
  text('analyzer', 'Analyzer'),
  text('class', 'Class'),
  text('quantity', 'Quantity'),
  numeric('absolute', '1', 'At least, in its unit', '', 2),
  numeric('relative', '1', 'Share of the value', '', 3),
  text('source', 'Source'),
];
