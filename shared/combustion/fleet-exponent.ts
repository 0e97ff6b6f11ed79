import { medianOf } from '../statistics/median-of.ts';
import { studentQuantile } from '../statistics/student.ts';

/** How one fire of one unit moved from where it was left to where it was next found, with nobody adjusting between. */
export interface AirSwing {
  /** Number of the unit. */
  readonly unit: number;
  /** ln(lambda found / lambda left). */
  readonly lambda: number;
  /** ln(air density found / left), by temperature alone. */
  readonly density: number;
  readonly years: number;
}

/** What a fleet's readings say of the density exponent of one kind of burner; the interval is 95 %. */
export interface FleetExponent {
  readonly exponent: number;
  readonly sd: number;
  readonly lower: number;
  readonly upper: number;
  readonly swings: number;
  readonly units: number;
  /** Fewer swings or units than an estimate needs; or air that moved too little for one. Then the numbers are NaN. */
  readonly verdict: 'estimated' | 'too_few' | 'too_narrow';
}

export const LEAST_SWINGS = 30;
export const LEAST_UNITS = 8;
/** An exponent less certain than this tells a fixed-volume fan from a pneumatic premix no better than the register does. */
const LARGEST_SD = 0.15;
/** Huber's bound, in robust standard deviations: 95 % efficient where errors are normal. */
const HUBER = 1.345;
const PASSES = 12;

/**
 * The exponent n in lambda ~ density ** n, from swings of a fleet: regression through the origin of ln lambda on
 * ln density and on the years between (the fleet's mean drift), by Huber's M-estimate, since adjustments that nobody
 * wrote down are outliers; standard errors from the sandwich with units as clusters (Huber 1964 and 1967; Liang and Zeger
 * 1986, from memory); interval by Student's t with one degree less than there are units. The noise of the air reading
 * pulls the slope towards 0 and is divided out (errors in variables, Fuller 1987, chapter 1, from memory).
 * @param airNoise standard uncertainty of one ln density: that of an air temperature over the temperature
 */
export function estimateExponent(swings: readonly AirSwing[], airNoise: number): FleetExponent {
  const units = new Set(swings.map(({ unit }) => unit)).size;
  const counted = { swings: swings.length, units };
  if (swings.length < LEAST_SWINGS || units < LEAST_UNITS) return { ...UNKNOWN, ...counted, verdict: 'too_few' };
  const fit = robustFit(swings);
  const share = 1 - (2 * airNoise * airNoise) / fit.partialDensity;
  const [exponent, sd] = [fit.exponent / share, fit.sd / share];
  if (!(share > 0.5 && sd <= LARGEST_SD)) return { ...UNKNOWN, ...counted, verdict: 'too_narrow' };
  const half = studentQuantile(0.975, units - 1) * sd;
  return { exponent, sd, lower: exponent - half, upper: exponent + half, ...counted, verdict: 'estimated' };
}

const UNKNOWN = { exponent: Number.NaN, sd: Number.NaN, lower: Number.NaN, upper: Number.NaN } as const;

interface Fit {
  readonly exponent: number;
  readonly sd: number;
  /** Mean square of ln density beside the years. */
  readonly partialDensity: number;
}

function robustFit(swings: readonly AirSwing[]): Fit {
  let weights = swings.map(() => 1);
  let sums = normalSums(swings, weights);
  for (let pass = 0; pass < PASSES; pass++) {
    const errors = swings.map((swing) => errorOf(swing, sums));
    const scale = medianOf(errors.map(Math.abs)) / 0.6745;
    if (!(scale > 0)) break;
    weights = errors.map((error) => Math.min(1, (HUBER * scale) / Math.abs(error)));
    sums = normalSums(swings, weights);
  }
  return { exponent: sums.exponent, sd: clusteredSd(swings, weights, sums), partialDensity: partialOf(swings) };
}

interface Sums {
  readonly xx: number;
  readonly xt: number;
  readonly tt: number;
  readonly determinant: number;
  readonly exponent: number;
  readonly drift: number;
}

function normalSums(swings: readonly AirSwing[], weights: readonly number[]): Sums {
  let [xx, xt, tt, xy, ty] = [0, 0, 0, 0, 0];
  swings.forEach(({ density: x, years: t, lambda: y }, i) => {
    const w = weights[i];
    xx += w * x * x;
    xt += w * x * t;
    tt += w * t * t;
    xy += w * x * y;
    ty += w * t * y;
  });
  const determinant = xx * tt - xt * xt;
  const [exponent, drift] = [(tt * xy - xt * ty) / determinant, (xx * ty - xt * xy) / determinant];
  return { xx, xt, tt, determinant, exponent, drift };
}

const errorOf = ({ lambda, density, years }: AirSwing, { exponent, drift }: Sums): number =>
  lambda - exponent * density - drift * years;

/** Root of the exponent's entry in the sandwich, clusters being units. */
function clusteredSd(swings: readonly AirSwing[], weights: readonly number[], sums: Sums): number {
  const { xt, tt, determinant } = sums;
  const scores = new Map<number, number>();
  swings.forEach((swing, i) => {
    const score = (weights[i] * errorOf(swing, sums) * (tt * swing.density - xt * swing.years)) / determinant;
    scores.set(swing.unit, (scores.get(swing.unit) ?? 0) + score);
  });
  const units = scores.size;
  const squares = [...scores.values()].reduce((sum, score) => sum + score * score, 0);
  return Math.sqrt((squares * units) / (units - 1));
}

function partialOf(swings: readonly AirSwing[]): number {
  const { xx, xt, tt } = normalSums(
    swings,
    swings.map(() => 1),
  );
  return (xx - (xt * xt) / tt) / swings.length;
}
