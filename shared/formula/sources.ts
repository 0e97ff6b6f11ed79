import type { TextColumn } from '../table/table.ts';

/** Writes rows `from` to `from + n` of a column to `out[0..n)`. */
export type BlockSource = (from: number, n: number, out: Float64Array) => void;

/** Where the inputs of a program come from. */
export interface Sources {
  readonly rows: number;
  readonly numbers: ReadonlyMap<string, BlockSource>;
  readonly texts: ReadonlyMap<string, TextColumn>;
  /** Standard uncertainty of an input, in its own unit (kelvin for a temperature). Inputs without one count as exact. */
  readonly uncertainties: ReadonlyMap<string, BlockSource>;
  /** Marks of inputs that are only known to be at least (1) or at most (-1) their value. */
  readonly bounds: ReadonlyMap<string, Int8Array>;
  /** Inputs that are never below 0, such as concentrations: a bound of one reaches no further down either. */
  readonly nonNegative?: ReadonlySet<string>;
  /** Inputs that are unknown in every row; naming them saves their passes and changes nothing else. */
  readonly absent?: ReadonlySet<string>;
}

/** The columns that a program fills. Those not given are not written. */
export interface OutputColumn {
  readonly values: Float64Array;
  readonly sd?: Float64Array;
  readonly bounds?: Int8Array;
  /** True where the arrays hold one block only, written over with every block. */
  readonly window?: boolean;
}

export const fromColumn =
  (values: Float64Array): BlockSource =>
  (from, n, out) =>
    out.set(values.subarray(from, from + n));

export const fromConstant =
  (value: number): BlockSource =>
  (_, n, out) =>
    void out.fill(value, 0, n);

/** A number for each level of a text column; unknown where the text is, unless `whenUnknown` says otherwise. */
export function fromLevels(codes: Int32Array, perLevel: readonly number[], whenUnknown = Number.NaN): BlockSource {
  // Code -1, unknown, stands first, so that no row asks which it is.
  const numbers = Float64Array.from([whenUnknown, ...perLevel]);
  return (from, n, out) => {
    for (let i = 0; i < n; i++) out[i] = numbers[codes[from + i] + 1];
  };
}
