import { exp } from '../quantities/elementary.ts';

/**
 * Coefficients of W. J. Cody, "Rational Chebyshev approximations for the error function", Math. Comp. 23 (1969) 631-637,
 * as commonly printed: relative error below 1.2e-16 over the three ranges.
 */
// biome-ignore-start lint/correctness/noPrecisionLoss: printed as published
const SMALL_TOP = [3.1611237438705656, 113.86415415105016, 377.485237685302, 3209.3775891384694, 0.18577770618460315];
const SMALL_BOTTOM = [23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171];
const MIDDLE_TOP = [
  0.5641884969886701, 8.883149794388377, 66.11919063714163, 298.6351381974001, 881.952221241769, 1712.0476126340707,
  2051.0783778260716, 1230.3393547979972, 2.1531153547440383e-8,
];
const MIDDLE_BOTTOM = [
  15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597, 4362.619090143247,
  3439.3676741437216, 1230.3393548037495,
];
const LARGE_TOP = [
  0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.016083785148742275, 6.587491615298378e-4,
  0.016315387137302097,
];
const LARGE_BOTTOM = [
  2.568520192289822, 1.8729528499234604, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
];
// biome-ignore-end lint/correctness/noPrecisionLoss: printed as published
const ONE_OVER_ROOT_PI = 0.5641895835477563;

/** exp(x²) erfc(x) for x ≥ 0. */
function scaledErrorComplement(x: number): number {
  if (x <= 0.46875) return exp(x * x) * (1 - smallErrorFunction(x));
  return x <= 4 ? middleRange(x) : largeRange(x);
}

function smallErrorFunction(x: number): number {
  const square = x * x;
  let top = SMALL_TOP[4] * square;
  let bottom = square;
  for (let i = 0; i < 3; i++) {
    top = (top + SMALL_TOP[i]) * square;
    bottom = (bottom + SMALL_BOTTOM[i]) * square;
  }
  return (x * (top + SMALL_TOP[3])) / (bottom + SMALL_BOTTOM[3]);
}

function middleRange(x: number): number {
  let top = MIDDLE_TOP[8] * x;
  let bottom = x;
  for (let i = 0; i < 7; i++) {
    top = (top + MIDDLE_TOP[i]) * x;
    bottom = (bottom + MIDDLE_BOTTOM[i]) * x;
  }
  return (top + MIDDLE_TOP[7]) / (bottom + MIDDLE_BOTTOM[7]);
}

function largeRange(x: number): number {
  const square = 1 / (x * x);
  let top = LARGE_TOP[5] * square;
  let bottom = square;
  for (let i = 0; i < 4; i++) {
    top = (top + LARGE_TOP[i]) * square;
    bottom = (bottom + LARGE_BOTTOM[i]) * square;
  }
  return (ONE_OVER_ROOT_PI - (square * (top + LARGE_TOP[4])) / (bottom + LARGE_BOTTOM[4])) / x;
}

/**
 * Φ(−z)·exp(z²/2) for z ≥ 0: the upper tail of the standard normal, scaled so that it neither vanishes nor overflows
 * (Mills' ratio divided by √2π).
 */
export function scaledUpperTail(z: number): number {
  return 0.5 * scaledErrorComplement(z * Math.SQRT1_2);
}
