import { twelveDigits } from '../quantities/twelve-digits.ts';

/** A parameter's number as people read and type it: 0.07 by a factor of 100 is "7", without the dust of the product. */
export const shownAmount = (value: number, factor = 1): string => twelveDigits(value * factor);
