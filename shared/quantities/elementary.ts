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
export const exp: (x: number) => number = stdlibExp;
/** Natural logarithm. */
export const ln: (x: number) => number = stdlibLn;
export const log10: (x: number) => number = stdlibLog10;
export const power: (base: number, exponent: number) => number = stdlibPow;
export const cos: (x: number) => number = stdlibCos;
