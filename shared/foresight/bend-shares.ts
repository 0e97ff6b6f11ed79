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

/** What each possibility of each lane weighs before the shares, in a scale of its own: apart, bent, neither. */
interface Weights {
  readonly apart: Float64Array;
  readonly bent: Float64Array;
  readonly neither: Float64Array;
  /** Sum of the logarithms of the scales. */
  readonly scale: number;
}

/** Shares at the maximum of the likelihood, by the EM iteration for a mixture (Dempster, Laird and Rubin 1977, J. R. Statist. Soc. B 39, 1-38). */
export function bendShares(bends: LaneBends): BendShares {
  const asked = [...bends.bent.keys()].filter((lane) => !Number.isNaN(bends.bent[lane]));
  const weights = weigh(bends, asked);
  const without = maximum(weights, 0);
  const found = maximum(weights, START);
  const chance = new Float64Array(bends.bent.length);
  asked.forEach((lane, i) => {
    const bent = found.bent * weights.bent[i];
    chance[lane] = bent / (bent + found.apart * weights.apart[i] + (1 - found.apart - found.bent) * weights.neither[i]);
  });
  return { bent: found.bent, apart: found.apart, gain: found.value - without.value, chance };
}

function weigh({ apart, bent }: LaneBends, asked: readonly number[]): Weights {
  const scales = asked.map((lane) => Math.max(0, apart[lane], bent[lane]));
  return {
    apart: Float64Array.from(asked, (lane, i) => exp(apart[lane] - scales[i])),
    bent: Float64Array.from(asked, (lane, i) => exp(bent[lane] - scales[i])),
    neither: Float64Array.from(scales, (scale) => exp(-scale)),
    scale: scales.reduce((sum, scale) => sum + scale, 0),
  };
}

function maximum(weights: Weights, start: number): { apart: number; bent: number; value: number } {
  const lanes = weights.neither.length;
  let [apart, bent] = [START, start];
  for (let round = 0; round < ROUNDS; round++) {
    let [ofApart, ofBent] = [0, 0];
    for (let i = 0; i < lanes; i++) {
      const [isApart, isBent] = [apart * weights.apart[i], bent * weights.bent[i]];
      const all = isApart + isBent + (1 - apart - bent) * weights.neither[i];
      ofApart += isApart / all;
      ofBent += isBent / all;
    }
    apart = ofApart / lanes;
    bent = ofBent / lanes;
  }
  let value = weights.scale;
  for (let i = 0; i < lanes; i++)
    value += ln(apart * weights.apart[i] + bent * weights.bent[i] + (1 - apart - bent) * weights.neither[i]);
  return { apart, bent, value };
}
