import type { Blank } from '../cell.ts';

/**
 * The blank that names the cell to read: `label` says what is read of it ("derived values"). With `optional` there may be
 * none, which is then said with the same words.
 */
export function cellBlank(
  parameter: string,
  label: string,
  name: string,
  kinds: readonly string[],
  { optional }: { readonly optional?: boolean } = {},
): Blank {
  return {
    parameter,
    label,
    text: name === '' ? `no ${label}` : name,
    entry: { kind: 'cell', kinds, ...(optional ? { optional } : {}) },
  };
}
