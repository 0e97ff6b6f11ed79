import stdlibCos from '@stdlib/math-base-special-cos';
import stdlibExp from '@stdlib/math-base-special-exp';
import stdlibLn from '@stdlib/math-base-special-ln';
import stdlibLog10 from '@stdlib/math-base-special-log10';
import stdlibPow from '@stdlib/math-base-special-pow';

/**
 * Elementary functions that give the same bits in every JavaScript engine. Math.exp, log, pow and cos may differ in the
 * last bit from one engine to the next (ECMAScript leaves them open), and an iterated fit makes that bit the ninth digit.
 * These are computed with + - * / alone, which IEEE 754 fixes. Errors stay below one unit in the last place.
 */

/**
 * exp(x) = 2^k exp(r), |r| ≤ ln(2)/2, by the reduction and the rational function that FreeBSD's e_exp.c made common:
 * "Copyright (c) 2004 by Sun Microsystems, Inc. All rights reserved. Permission to use, copy, modify, and distribute this
 * software is freely granted, provided that this notice is preserved." The library's exp does the same steps, so that the
 * bits are the same; it takes the bits of a number apart to scale by 2^k, where here one product does, in a third of the time.
 */
export function exp(x: number): number {
  // Where 2^k is no normal number, where nothing is to be reduced, and for NaN.
  if (!(x > -700 && x < 700) || (x > -TINY && x < TINY)) return stdlibExp(x);
  const k = (x < 0 ? LOG2_E * x - 0.5 : LOG2_E * x + 0.5) | 0;
  const high = x - k * LN2_HIGH;
  const low = k * LN2_LOW;
  const r = high - low;
  const t = r * r;
  const c = r - t * (P1 + t * (P2 + t * (P3 + t * (P4 + t * P5))));
  return (1 - (low - (r * c) / (2 - c) - high)) * POWERS_OF_2[k + LARGEST_POWER];
}

const TINY = 1 / 0x10000000;
const LOG2_E = Math.LOG2E;
/** ln 2 in two parts, the first with zeros at its end, so that k times it is exact. */
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const P1 = 0.16666666666666602;
const P2 = -0.0027777777777015593;
const P3 = 0.00006613756321437934;
const P4 = -0.0000016533902205465252;
const P5 = 4.1381367970572385e-8;
const LARGEST_POWER = 1022;
const POWERS_OF_2 = powersOf2();

/** By doubling and halving, which are exact. */
function powersOf2(): Float64Array {
  const powers = new Float64Array(2 * LARGEST_POWER + 1).fill(1);
  for (let k = 1; k <= LARGEST_POWER; k++) {
    powers[LARGEST_POWER + k] = 2 * powers[LARGEST_POWER + k - 1];
    powers[LARGEST_POWER - k] = powers[LARGEST_POWER - k + 1] / 2;
  }
  return powers;
}

/** Natural logarithm. */
export const ln: (x: number) => number = stdlibLn;
export const log10: (x: number) => number = stdlibLog10;
export const power: (base: number, exponent: number) => number = stdlibPow;
export const cos: (x: number) => number = stdlibCos;
