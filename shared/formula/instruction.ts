/** What changes from block to block. */
export interface BlockContext {
  from: number;
}

/** One pass over a block. Buffers are named by number until `link` is handed the arrays that they came to be. */
export interface Instruction {
  readonly reads: readonly number[];
  readonly writes: readonly number[];
  readonly link: (buffer: (id: number) => Float64Array) => (n: number) => void;
}

/** A derivative: `scale` times a buffer. Sums, multiples and conversions only touch the scale. */
export interface Slope {
  readonly buffer: number;
  readonly scale: number;
}

/** Derivatives of one step with respect to the uncertain inputs that it depends on, by the input's number. */
export type Slopes = ReadonlyMap<number, Slope>;
export const NO_SLOPES: Slopes = new Map();

/** Numbers of the two buffers that hold ones and zeros. */
export const ONES = 0;
export const ZEROS = 1;
