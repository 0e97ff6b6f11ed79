import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { regress } from '../statistics/regress.ts';
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
  const ones = x.map(() => 1);
  const places = x.slice(2, x.length - LEAST_AFTER + 1);
  let least = FALSE_BEND / places.length;
  let began: number | undefined;
  for (const [at, bend] of places.entries()) {
    const { coefficients, standardErrors, freedom } = regress(y, [ones, x, x.map((year) => Math.max(0, year - bend))]);
    const [, before, more] = coefficients;
    const p = more > 0 && before + more > 0 ? 1 - studentCdf(more / standardErrors[2], freedom) : 1;
    if (p < least) {
      least = p;
      began = days[known[at + 2]];
    }
  }
  return began;
}
