import { exp } from '../quantities/elementary.ts';

/*
 * W. J. Cody, "Rational Chebyshev approximations for the error function", Math. Comp. 23 (1969) 631-637, with the
 * coefficients as commonly printed: relative error below 1.2e-16 over the three ranges. The loops are written out, since
 * a number in the program is there where a table's has to be fetched: a third less time.
 */
// biome-ignore-start lint/correctness/noPrecisionLoss: printed as published
function smallErrorFunction(x: number): number {
  const s = x * x;
  const top =
    (((0.18577770618460315 * s + 3.1611237438705656) * s + 113.86415415105016) * s + 377.485237685302) * s +
    3209.3775891384694;
  const bottom = (((s + 23.601290952344122) * s + 244.02463793444417) * s + 1282.6165260773723) * s + 2844.236833439171;
  return (x * top) / bottom;
}

/** exp(x²) erfc(x) for 0.46875 < x ≤ 4. */
function middleRange(x: number): number {
  const top =
    (((((((2.1531153547440383e-8 * x + 0.5641884969886701) * x + 8.883149794388377) * x + 66.11919063714163) * x +
      298.6351381974001) *
      x +
      881.952221241769) *
      x +
      1712.0476126340707) *
      x +
      2051.0783778260716) *
      x +
    1230.3393547979972;
  const bottom =
    (((((((x + 15.744926110709835) * x + 117.6939508913125) * x + 537.1811018620099) * x + 1621.3895745666903) * x +
      3290.7992357334597) *
      x +
      4362.619090143247) *
      x +
      3439.3676741437216) *
      x +
    1230.3393548037495;
  return top / bottom;
}

/** exp(x²) erfc(x) for x > 4. */
function largeRange(x: number): number {
  const s = 1 / (x * x);
  const top =
    ((((0.016315387137302097 * s + 0.30532663496123236) * s + 0.36034489994980445) * s + 0.12578172611122926) * s +
      0.016083785148742275) *
      s +
    6.587491615298378e-4;
  const bottom =
    ((((s + 2.568520192289822) * s + 1.8729528499234604) * s + 0.5279051029514285) * s + 0.06051834131244132) * s +
    0.0023352049762686918;
  return (ONE_OVER_ROOT_PI - (s * top) / bottom) / x;
}
// biome-ignore-end lint/correctness/noPrecisionLoss: printed as published
const ONE_OVER_ROOT_PI = 0.5641895835477563;

/** exp(x²) erfc(x) for x ≥ 0. */
function scaledErrorComplement(x: number): number {
  if (x <= 0.46875) return exp(x * x) * (1 - smallErrorFunction(x));
  return x <= 4 ? middleRange(x) : largeRange(x);
}

/**
 * Φ(−z)·exp(z²/2) for z ≥ 0: the upper tail of the standard normal, scaled so that it neither vanishes nor overflows
 * (Mills' ratio divided by √2π).
 */
export function scaledUpperTail(z: number): number {
  return 0.5 * scaledErrorComplement(z * Math.SQRT1_2);
}
