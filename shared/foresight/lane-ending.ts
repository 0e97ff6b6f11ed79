import { columnsOf, type FleetProgram } from './fleet-program.ts';
import type { SharedEffects } from './shared-effects.ts';
import type { UnitFilter } from './unit-filter.ts';

/** Level and rate of a lane at the end of its unit's steps, with what the shared effects add. */
export interface LaneEnding {
  readonly level: number;
  readonly rate: number;
  readonly levelVariance: number;
  readonly rateVariance: number;
  readonly covariance: number;
}

/** Endings of many lanes, a column each. */
export type EndingColumns = { readonly [Name in keyof LaneEnding]: Float64Array };

export const endingAt = (from: EndingColumns, lane: number): LaneEnding => ({
  level: from.level[lane],
  rate: from.rate[lane],
  levelVariance: from.levelVariance[lane],
  rateVariance: from.rateVariance[lane],
  covariance: from.covariance[lane],
});

export function putEnding(into: EndingColumns, lane: number, ending: LaneEnding): void {
  into.level[lane] = ending.level;
  into.rate[lane] = ending.rate;
  into.levelVariance[lane] = ending.levelVariance;
  into.rateVariance[lane] = ending.rateVariance;
  into.covariance[lane] = ending.covariance;
}

/** @param x place of the lane's level among the filter's states; its rate stands after it */
export function laneEnding(
  { size, covariance, means, active }: UnitFilter,
  program: FleetProgram,
  unit: number,
  x: number,
  effects: SharedEffects,
): LaneEnding {
  const d = x + 1;
  const first = program.unitColumns[unit];
  const total = columnsOf(program.shared);
  let level = means[x];
  let rate = means[d];
  let levelVariance = covariance[x * size + x];
  let rateVariance = covariance[d * size + d];
  let both = covariance[x * size + d];
  for (let j = 1; j < active; j++) {
    const row = program.columns[first + j - 1];
    const ax = means[j * size + x];
    const ad = means[j * size + d];
    if (ax === 0 && ad === 0) continue;
    level -= ax * effects.values[row];
    rate -= ad * effects.values[row];
    for (let k = 1; k < active; k++) {
      const shared = effects.covariance[row * total + program.columns[first + k - 1]];
      levelVariance += ax * means[k * size + x] * shared;
      rateVariance += ad * means[k * size + d] * shared;
      both += ax * means[k * size + d] * shared;
    }
  }
  return { level, rate, levelVariance, rateVariance, covariance: both };
}

/**
 * What the variance of a level, and its covariance with the rate, have more when an offset is added to the level.
 * @param place of the offset among the unit's columns, -1 for none
 */
export function offsetEnding(
  { size, means, active }: Pick<UnitFilter, 'size' | 'means' | 'active'>,
  program: FleetProgram,
  unit: number,
  x: number,
  place: number,
  effects: SharedEffects,
): { variance: number; covariance: number } {
  if (place < 0) return { variance: 0, covariance: 0 };
  const first = program.unitColumns[unit];
  const row = program.columns[first + place] * columnsOf(program.shared);
  let [withLevel, withRate] = [0, 0];
  for (let j = 1; j < active; j++) {
    const shared = effects.covariance[row + program.columns[first + j - 1]];
    withLevel -= means[j * size + x] * shared;
    withRate -= means[j * size + x + 1] * shared;
  }
  const own = effects.covariance[row + program.columns[first + place]];
  return { variance: own + 2 * withLevel, covariance: withRate };
}
