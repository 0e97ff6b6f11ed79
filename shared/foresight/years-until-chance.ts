import { exp, ln } from '../quantities/elementary.ts';
import { type Band, chanceOutWithin, type LevelState } from './leaving-chance.ts';

interface Reached {
  readonly years: number;
  readonly chance: number;
  /** Along these two the chance is nearly a straight line: ln t and ln(p / (1 − p)). */
  readonly time: number;
  readonly height: number;
}

const HALF_DAY = 0.5 / 365.25;
/** A date is where the chance is this near its share, or known to half a day. */
const CLOSE_ENOUGH = 2e-3;
/** Absolute error of the chances that are asked on the way. */
const ON_THE_WAY = 1e-4;
/** Where to look first, as a share of the furthest time. */
const FIRST_LOOK = 0.4;

/**
 * Years after the last visit at which the chance of having left reaches each share, ascending shares; NaN where it does not
 * within `furthest`. The chance never falls, so each is bracketed by what has been evaluated before, for another share too.
 */
export function yearsUntilChance(state: LevelState, band: Band, shares: readonly number[], furthest: number): number[] {
  const reachedAt = (years: number): Reached => {
    const chance = chanceOutWithin(state, band, years, ON_THE_WAY);
    return { years, chance, time: ln(years), height: logit(chance) };
  };
  const atOnce = chanceOutWithin(state, band, 0);
  const known = furthest > 0 && !(atOnce >= shares[shares.length - 1]) ? [reachedAt(furthest)] : [];
  return shares.map((share) => {
    if (atOnce >= share) return 0;
    if (!(known.length > 0 && known[known.length - 1].chance >= share)) return Number.NaN;
    return search(reachedAt, known, share);
  });
}

/**
 * By a parabola through the three points nearest in chance, kept inside the bracket; halves it where that crawls.
 * @param known in the order of time, added to
 */
function search(reachedAt: (years: number) => Reached, known: Reached[], share: number): number {
  const goal = logit(share);
  for (let turn = 0; turn < 60; turn++) {
    const place = known.findIndex(({ chance }) => chance >= share);
    const high = known[place];
    const low = place > 0 ? known[place - 1].years : 0;
    if (high.chance - share < CLOSE_ENOUGH || high.years - low < HALF_DAY) return high.years;
    if (place > 0 && share - known[place - 1].chance < CLOSE_ENOUGH) return low;
    const guess = turn % 6 === 5 ? (low + high.years) / 2 : guessed(known, place, goal);
    // One that misses the bracket says nothing of how near its end the date is.
    const edge = 0.02 * (high.years - low);
    const years = guess > low + edge ? Math.min(guess, high.years - edge) : Math.max(low + edge, 0.1 * high.years);
    known.splice(place, 0, reachedAt(years));
  }
  return Number.NaN;
}

/** Inverse interpolation at `goal` through what lies about `place`; a fixed share of the time where one point is known. */
function guessed(known: readonly Reached[], place: number, goal: number): number {
  if (known.length === 1) return FIRST_LOOK * known[0].years;
  const [a, b, c] = nearestOf(known, place, goal);
  const slope = (b.time - a.time) / (b.height - a.height);
  let time = a.time + (goal - a.height) * slope;
  if (c) {
    const bend = ((c.time - b.time) / (c.height - b.height) - slope) / (c.height - a.height);
    time += (goal - a.height) * (goal - b.height) * bend;
  }
  return exp(time);
}

/** Two or three points in the order of their distance in height. */
function nearestOf(known: readonly Reached[], place: number, goal: number): Reached[] {
  const nearest: Reached[] = [];
  let [before, after] = [place - 1, place];
  while (nearest.length < 3 && (before >= 0 || after < known.length)) {
    const takesAfter = before < 0 || (after < known.length && known[after].height - goal < goal - known[before].height);
    nearest.push(known[takesAfter ? after++ : before--]);
  }
  return nearest;
}

const logit = (chance: number): number => {
  const kept = Math.min(1 - 1e-9, Math.max(1e-9, chance));
  return ln(kept / (1 - kept));
};
