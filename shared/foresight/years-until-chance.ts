import { ln } from '../quantities/elementary.ts';
import { type Band, chanceOutWithin, type LevelState } from './leaving-chance.ts';

interface Reached {
  readonly years: number;
  readonly chance: number;
}

const HALF_DAY = 0.5 / 365.25;
const CLOSE_ENOUGH = 2e-3;

/**
 * Years after the last visit at which the chance of having left reaches each share, ascending shares; NaN where it does not
 * within `furthest`. The chance never falls, so each is bracketed by what has been evaluated before.
 */
export function yearsUntilChance(state: LevelState, band: Band, shares: readonly number[], furthest: number): number[] {
  const chanceAt = (years: number): Reached => ({ years, chance: chanceOutWithin(state, band, years) });
  const known = [chanceAt(0)];
  if (furthest > 0) known.push(chanceAt(furthest));
  return shares.map((share) => {
    if (known[0].chance >= share) return 0;
    if (!(known[known.length - 1].chance >= share)) return Number.NaN;
    return search(chanceAt, known, share);
  });
}

/** Secant on the logit over the root of time, kept inside the bracket; halves it where the secant crawls. */
function search(chanceAt: (years: number) => Reached, known: Reached[], share: number): number {
  for (let turn = 0; turn < 40; turn++) {
    const place = known.findIndex(({ chance }) => chance >= share);
    const [low, high] = [known[place - 1], known[place]];
    if (high.chance - share < CLOSE_ENOUGH || high.years - low.years < HALF_DAY) return high.years;
    if (share - low.chance < CLOSE_ENOUGH) return low.years;
    const next = chanceAt(turn % 3 === 2 ? (low.years + high.years) / 2 : between(low, high, share));
    known.splice(place, 0, next);
  }
  return Number.NaN;
}

function between(low: Reached, high: Reached, share: number): number {
  const [a, b, goal] = [logit(low.chance), logit(high.chance), logit(share)];
  const [from, to] = [Math.sqrt(low.years), Math.sqrt(high.years)];
  const root = from + ((goal - a) / (b - a)) * (to - from);
  const edge = 0.05 * (to - from);
  return Math.min(to - edge, Math.max(from + edge, root)) ** 2;
}

const logit = (chance: number): number => {
  const kept = Math.min(1 - 1e-6, Math.max(1e-6, chance));
  return ln(kept / (1 - kept));
};
