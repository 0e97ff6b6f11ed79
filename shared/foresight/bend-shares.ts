import { exp, ln } from '../quantities/elementary.ts';
import type { LaneBends } from './bent-lanes.ts';

/** How many of a fleet's lanes changed their rate, and what speaks for it. */
export interface BendShares {
  /** Share of lanes whose rate changed once; of lanes whose rate stood off their class's all along. */
  readonly bent: number;
  readonly apart: number;
  /** Log likelihood of the fleet over that without any bend. */
  readonly gain: number;
  /** Per lane: chance that its rate changed. */
  readonly chance: Float64Array;
}

const ROUNDS = 200;
const START = 0.05;

/** Shares at the maximum of the likelihood, by the EM iteration for a mixture (Dempster, Laird and Rubin 1977, J. R. Statist. Soc. B 39, 1-38). */
export function bendShares(bends: LaneBends): BendShares {
  const asked = [...bends.bent.keys()].filter((lane) => !Number.isNaN(bends.bent[lane]));
  const kinds = asked.map((lane) => [bends.apart[lane], bends.bent[lane]] as const);
  const without = maximum(kinds, 0);
  const found = maximum(kinds, START);
  const chance = new Float64Array(bends.bent.length);
  asked.forEach((lane, i) => {
    const [, bent, all] = terms(kinds[i], found.apart, found.bent);
    chance[lane] = bent / all;
  });
  return { bent: found.bent, apart: found.apart, gain: found.value - without.value, chance };
}

function maximum(
  kinds: readonly (readonly [number, number])[],
  start: number,
): { apart: number; bent: number; value: number } {
  let [apart, bent] = [START, start];
  let value = 0;
  for (let round = 0; round < ROUNDS; round++) {
    let [ofApart, ofBent] = [0, 0];
    value = 0;
    for (const kind of kinds) {
      const [isApart, isBent, all, scale] = terms(kind, apart, bent);
      ofApart += isApart / all;
      ofBent += isBent / all;
      value += ln(all) + scale;
    }
    apart = ofApart / kinds.length;
    bent = ofBent / kinds.length;
  }
  return { apart, bent, value };
}

/** What each possibility weighs, their sum, and the logarithm of the scale that they are told in. */
function terms([a, b]: readonly [number, number], apart: number, bent: number): [number, number, number, number] {
  const scale = Math.max(0, a, b);
  const [isApart, isBent] = [apart * exp(a - scale), bent * exp(b - scale)];
  return [isApart, isBent, isApart + isBent + (1 - apart - bent) * exp(-scale), scale];
}
