/** Memory is used again where it is not much larger than what is wanted, as a share: what is left over stays taken. */
const LARGEST = 1.25;

interface Memory<Self> {
  readonly length: number;
  subarray(from: number, to: number): Self;
}

/**
 * Hands the memory of a column that was copied to the next one. First touch of new memory costs more than the copying.
 */
export class SpareMemory<A extends Memory<A>> {
  readonly #make: (length: number) => A;
  #spare: A | undefined;

  constructor(make: (length: number) => A) {
    this.#make = make;
  }

  /** Memory for `length` values, whatever it holds. */
  take(length: number): A {
    const spare = this.#spare;
    if (!spare || spare.length < length || spare.length > LARGEST * length) return this.#make(length);
    this.#spare = undefined;
    return spare.subarray(0, length);
  }

  give(memory: A): void {
    this.#spare = memory;
  }
}
