import { columnsOf, STEP } from './fleet-program.ts';
import type { SharedEffects } from './shared-effects.ts';
import type { Spread } from './spread.ts';
import { UnitFilter } from './unit-filter.ts';
import type { WrittenProgram } from './write-program.ts';

/** The level of each lane after each step that told of it, in order of lane and time; points of the modelled quantity. */
export interface LaneTrace {
  readonly lane: Int32Array;
  readonly day: Float64Array;
  readonly level: Float64Array;
  readonly sd: Float64Array;
}

/** What was known of every lane at each visit, from the readings up to then: before an adjustment and after it. */
export function traceLanes(written: WrittenProgram, spread: Spread, effects: SharedEffects): LaneTrace {
  const { program, stepDay } = written;
  const filter = new UnitFilter();
  const points: { lane: number; day: number; level: number; sd: number }[] = [];
  for (let unit = 0; unit < program.units; unit++) {
    filter.begin(program, unit);
    const end = program.unitSteps[unit + 1];
    for (let step = program.unitSteps[unit]; step < end; step++) {
      filter.take(program, unit, step, spread);
      const kind = program.kind[step];
      if (kind !== STEP.read && kind !== STEP.set) continue;
      if (step + 1 < end && program.kind[step + 1] === STEP.read && program.lane[step + 1] === program.lane[step])
        continue;
      const lane = program.unitLanes[unit] + program.lane[step];
      points.push({
        lane,
        day: stepDay[step],
        ...levelOf(filter, program.unitColumns[unit], program, lane, unit, effects),
      });
    }
  }
  points.sort((a, b) => a.lane - b.lane);
  return {
    lane: Int32Array.from(points, ({ lane }) => lane),
    day: Float64Array.from(points, ({ day }) => day),
    level: Float64Array.from(points, ({ level }) => level),
    sd: Float64Array.from(points, ({ sd }) => sd),
  };
}

function levelOf(
  filter: UnitFilter,
  first: number,
  program: WrittenProgram['program'],
  lane: number,
  unit: number,
  effects: SharedEffects,
): { level: number; sd: number } {
  const { size, means, covariance, active } = filter;
  const total = columnsOf(program.shared);
  const x = 2 * (lane - program.unitLanes[unit]);
  let level = means[x];
  let variance = covariance[x * size + x];
  for (let j = 1; j < active; j++) {
    const a = means[j * size + x];
    if (a === 0) continue;
    const row = program.columns[first + j - 1];
    level -= a * effects.values[row];
    for (let k = 1; k < active; k++)
      variance += a * means[k * size + x] * effects.covariance[row * total + program.columns[first + k - 1]];
  }
  return { level, sd: Math.sqrt(Math.max(0, variance)) };
}
