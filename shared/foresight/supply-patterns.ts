import { medianOf } from '../statistics/median-of.ts';
import { commonVariance } from '../statistics/moderated-variance.ts';
import { varianceRatioTail } from '../statistics/variance-ratio.ts';
import { type SupplyPattern, type SupplyTrends, supplyTrends } from './supply-pattern.ts';
import { scaleOf, type UnitSupply } from './supply-readings.ts';

/** A scatter this large shows at a gauge: a tenth of an inch of water, in pascals (common practice, no source). */
const SEEN_PA = 25;
/** Without other units to compare with: a quarter of an inch of water. */
const LARGE_PA = 62;
/** How many times the other units' scatter. */
const TIMES = 2;
/** Chance of such a scatter at a unit like the others. */
const FALSE_HUNT = 0.001;
/** Units to compare with, below which the gauge alone decides. */
const LEAST_OTHERS = 4;

/**
 * What the columns of every unit fit, in the order of `units`.
 * @param linesOf names of what a unit shares its gas line with (its building, its gas zone); none where the register has none
 */
export function supplyPatterns(
  units: readonly UnitSupply[],
  linesOf: (unit: string) => readonly string[],
): SupplyPattern[] {
  const trends = units.map(supplyTrends);
  const falling = fallingLines(units, trends, linesOf);
  const hunts = huntingUnits(units, trends);
  return trends.map(({ pattern, falls }, i) => {
    if (falls && linesOf(units[i].unit).some((line) => falling.has(line))) return 'shared_line';
    return pattern === 'steady' && hunts[i] ? 'hunting' : pattern;
  });
}

/** Lines on which two units or more fall, and at least half of those that say anything. */
function fallingLines(
  units: readonly UnitSupply[],
  trends: readonly SupplyTrends[],
  linesOf: (unit: string) => readonly string[],
): Set<string> {
  const counts = new Map<string, { fall: number; known: number }>();
  units.forEach(({ unit }, i) => {
    if (trends[i].pattern === '') return;
    for (const line of linesOf(unit)) {
      const count = counts.get(line) ?? { fall: 0, known: 0 };
      counts.set(line, { fall: count.fall + Number(trends[i].falls), known: count.known + 1 });
    }
  });
  return new Set([...counts].filter(([, { fall, known }]) => fall >= 2 && 2 * fall >= known).map(([line]) => line));
}

/**
 * Units whose running pressure and drop both stray about their lines more than the other units' do: an F test against the
 * variance common to these (Smyth 2004, see moderated-variance.ts). Static alone that strays is the service's own.
 */
function huntingUnits(units: readonly UnitSupply[], trends: readonly SupplyTrends[]): boolean[] {
  const scales = units.map((unit) => scaleOf(unit) ** 2);
  const strays = (pick: (of: SupplyTrends) => number): boolean[] => {
    const own = trends.map((of, i) => (of.freedom > 0 ? pick(of) / scales[i] : Number.NaN));
    const usual = medianOf(own.filter(Number.isFinite));
    const stands = own.map((variance) => variance > SEEN_PA ** 2 && variance > TIMES ** 2 * usual);
    const others = trends.map((_, i) => i).filter((i) => own[i] > 0 && !stands[i]);
    if (others.length < LEAST_OTHERS) return own.map((variance) => variance > LARGE_PA ** 2);
    const common = commonVariance(
      others.map((i) => own[i]),
      others.map((i) => trends[i].freedom),
    );
    const isChance = (i: number): boolean =>
      varianceRatioTail(own[i] / common.variance, trends[i].freedom, common.freedom) >= FALSE_HUNT;
    return stands.map((stand, i) => stand && !isChance(i));
  };
  const [running, drop] = [strays((of) => of.runningVariance), strays((of) => of.dropVariance)];
  return running.map((stray, i) => stray && drop[i]);
}
