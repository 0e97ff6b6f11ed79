import type { Blank } from '../cell.ts';

/** The blank of a free text; `shown` is what stands in the sentence for it. */
export const textBlank = (parameter: string, label: string, shown: string): Blank => ({
  parameter,
  label,
  text: shown,
  entry: { kind: 'text' },
});
