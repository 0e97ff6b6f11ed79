/**
 * One operation over a column. Steps refer to earlier ones by number, so a list of them is already in order and equal
 * operations are stored once. Steps know no names of the user's and no units: both were settled when they were made.
 */
export type Step =
  | { readonly op: 'input'; readonly args: readonly []; readonly name: string }
  | { readonly op: 'constant'; readonly args: readonly []; readonly value: number }
  /** args[0] * factor + offset */
  | { readonly op: 'affine'; readonly args: readonly [number]; readonly factor: number; readonly offset: number }
  | { readonly op: 'add' | 'subtract' | 'multiply' | 'divide'; readonly args: readonly [number, number] }
  | { readonly op: 'compare'; readonly args: readonly [number, number]; readonly operator: Comparison }
  | { readonly op: 'and' | 'or'; readonly args: readonly [number, number] }
  | { readonly op: 'not' | 'known'; readonly args: readonly [number] }
  /** args[0] where true args[1], where false args[2], where unknown unknown */
  | { readonly op: 'choose'; readonly args: readonly [number, number, number] }
  | { readonly op: 'otherwise'; readonly args: readonly [number, number] }
  /** The two weighted by the inverse of their variances; the other where one is unknown. */
  | { readonly op: 'weigh'; readonly args: readonly [number, number] }
  /** Text of a column equal to a literal. */
  | { readonly op: 'text-is'; readonly args: readonly []; readonly name: string; readonly text: string }
  | { readonly op: 'apply'; readonly args: readonly number[]; readonly function: NumericFunction }
  /** A value per group of rows, over the whole column. */
  | {
      readonly op: 'group';
      /** The value, then the keys that are numbers or dates. */
      readonly args: readonly number[];
      readonly statistic: GroupStatistic;
      /** Columns of text to group by; '' stands for the next key among the arguments. */
      readonly by: readonly string[];
    };

export type Comparison = '<' | '<=' | '>' | '>=' | '==' | '!=';
export type GroupStatistic =
  | 'mean'
  | 'median'
  | 'stdev'
  | 'count'
  | 'minimum'
  | 'maximum'
  | 'first'
  | 'last'
  | 'previous'
  | 'rank';

/** A function of numbers, evaluated over arrays. */
export interface NumericFunction {
  /** Tells it from every other, with what it was made for: "enthalpy:CO2". */
  readonly key: string;
  /**
   * How many of the last arguments only spare work (a logarithm that others need too): each follows from the first
   * argument, whose partial derivative has it counted already.
   */
  readonly helpers?: number;
  /** Per argument: true where the function rises with it over its whole range. */
  readonly monotone: readonly boolean[];
  /** Whether it keeps one direction in each argument, be it up or down, where none of them is negative. */
  readonly monotoneFromZero?: true;
  /** Whether it is never negative, by which of its arguments are not; false when left out. */
  readonly neverNegative?: (args: readonly boolean[]) => boolean;
  /** Writes values to `out[0..n)`; NaN where there is none. */
  readonly values: (out: Float64Array, args: readonly Float64Array[], n: number) => void;
  /** Writes values, and the partial derivative with respect to each argument to `partials`. */
  readonly withPartials: (
    out: Float64Array,
    partials: readonly Float64Array[],
    args: readonly Float64Array[],
    n: number,
  ) => void;
}
