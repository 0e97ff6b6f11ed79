/** Seeded chance. The same seed text gives the same draws everywhere; each unit has a seed of its own, so that a change to one unit leaves the others as they were. */
export interface Chance {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal with the mean and standard deviation given. */
  normal(mean: number, sd: number): number;
  /** True with the probability given. */
  chance(probability: number): boolean;
  /** A whole number in [from, to]. */
  whole(from: number, to: number): number;
}

/** 32-bit FNV-1a of a text, stirred once more at the end, so that neighbouring seeds lie far apart. */
function hash(text: string): number {
  let state = 0x811c9dc5;
  for (const character of text) state = Math.imul(state ^ character.charCodeAt(0), 0x01000193);
  state = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
  state = Math.imul(state ^ (state >>> 13), 0xc2b2ae35);
  return (state ^ (state >>> 16)) >>> 0;
}

/** Chance from a seed text, by the 32-bit generator known as mulberry32 (public domain) and Box and Muller's transform. */
export function chanceFrom(seed: string): Chance {
  let state = hash(seed);
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform,
    normal: (mean, sd) => mean + sd * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    chance: (probability) => uniform() < probability,
    whole: (from, to) => from + Math.floor(uniform() * (to - from + 1)),
  };
}
