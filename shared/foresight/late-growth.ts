import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { type StraightLine, straightLine } from '../statistics/straight-line.ts';
import { studentCdf } from '../statistics/student.ts';
import type { UnitSupply } from './supply-readings.ts';

/** Visits before a bend is looked for, and those that must stand on its far side, the bend's own among them. */
const LEAST_VISITS = 6;
const LEAST_AFTER = 3;
/** A bend is believed at this chance of a false one a unit, over all the days at which it might lie. */
const FALSE_BEND = 0.002;

/**
 * The day from which a drop that stood still began to grow: where a line that bends upward there fits better than a straight
 * one (two-phase regression, Hinkley 1971, Biometrika 58, 525-536; t test of the bend, Bonferroni over the days tried).
 * What was read before that day says nothing about the growth since. Undefined where no bend is shown.
 */
export function growthBegan({ days, drop }: UnitSupply): number | undefined {
  const known = drop.flatMap((value, i) => (Number.isFinite(value) ? [i] : []));
  if (known.length < LEAST_VISITS) return undefined;
  const x = known.map((i) => (days[i] - days[known[0]]) / DAYS_PER_YEAR);
  const y = known.map((i) => drop[i]);
  const whole = straightLine(x, y);
  let [most, place] = [0, -1];
  const last = x.length - LEAST_AFTER;
  for (let at = 2; at <= last; at++) {
    const t = bendAt(x, x[at], whole);
    if (!(t > most)) continue;
    [most, place] = [t, at];
  }
  const sure = place >= 0 && 1 - studentCdf(most, x.length - 3) < FALSE_BEND / (last - 1);
  return sure ? days[known[place]] : undefined;
}

/** t of the bend at a time, the straight line through all readings given (Frisch and Waugh 1933, Econometrica 1, 387-401). */
function bendAt(x: readonly number[], bend: number, { slope, residuals }: StraightLine): number {
  const hinge = straightLine(
    x,
    x.map((year) => Math.max(0, year - bend)),
  );
  let [own, both, squares] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    own += hinge.residuals[i] ** 2;
    both += hinge.residuals[i] * residuals[i];
    squares += residuals[i] ** 2;
  }
  const more = both / own;
  const grows = more > 0 && slope + more * (1 - hinge.slope) > 0;
  return grows ? more / Math.sqrt(Math.max(0, squares - more * both) / (x.length - 3) / own) : 0;
}
