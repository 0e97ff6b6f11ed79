import { columnsOf, type FleetProgram, STEP } from './fleet-program.ts';
import { offsetEnding } from './lane-ending.ts';
import type { SharedEffects } from './shared-effects.ts';
import type { Spread } from './spread.ts';
import { UnitSmoother } from './unit-smoother.ts';
import type { WrittenProgram } from './write-program.ts';

/** The level of each lane at each visit, from all readings, in order of lane and time; points of the modelled quantity. */
export interface LaneTrace {
  readonly lane: Int32Array;
  readonly day: Float64Array;
  readonly level: Float64Array;
  readonly sd: Float64Array;
  /** The same with the offset of the second cell added to the level. */
  readonly sdWithOffset: Float64Array;
  /** First entry of each lane; one entry more than lanes. */
  readonly starts: Int32Array;
}

/** Smoothed levels at every visit: before an adjustment and, where there was one, after it too. */
export function traceLanes(
  { program, stepDay }: Pick<WrittenProgram, 'program' | 'stepDay'>,
  spread: Spread,
  effects: SharedEffects,
): LaneTrace {
  const lanes = program.laneClass.length;
  const starts = countPoints(program, lanes);
  const total = starts[lanes];
  const trace: LaneTrace = {
    lane: new Int32Array(total),
    day: new Float64Array(total),
    level: new Float64Array(total),
    sd: new Float64Array(total),
    sdWithOffset: new Float64Array(total),
    starts,
  };
  const next = starts.slice(1);
  const smoother = new UnitSmoother();
  for (let unit = 0; unit < program.units; unit++) {
    smoother.run(program, unit, spread, (step) => {
      if (!isShown(program, step, program.unitSteps[unit + 1])) return;
      const lane = program.unitLanes[unit] + program.lane[step];
      const place = --next[lane];
      const x = 2 * program.lane[step];
      const { level, variance } = levelOf(smoother, program, unit, x, effects);
      const at = { size: smoother.size, means: smoother.means, active: smoother.columns };
      const offset = offsetEnding(at, program, unit, x, program.laneOffset[lane], effects);
      trace.lane[place] = lane;
      trace.day[place] = stepDay[step];
      trace.level[place] = level;
      trace.sd[place] = Math.sqrt(Math.max(0, variance));
      trace.sdWithOffset[place] = Math.sqrt(Math.max(0, variance + offset.variance));
    });
  }
  return trace;
}

/** The last of consecutive readings of one level. */
function isShown({ kind, lane }: FleetProgram, step: number, end: number): boolean {
  if (kind[step] !== STEP.read && kind[step] !== STEP.set && kind[step] !== STEP.left) return false;
  return !(step + 1 < end && kind[step + 1] === STEP.read && lane[step + 1] === lane[step]);
}

function countPoints(program: FleetProgram, lanes: number): Int32Array {
  const starts = new Int32Array(lanes + 1);
  for (let unit = 0; unit < program.units; unit++)
    for (let step = program.unitSteps[unit]; step < program.unitSteps[unit + 1]; step++)
      if (isShown(program, step, program.unitSteps[unit + 1]))
        starts[program.unitLanes[unit] + program.lane[step] + 1]++;
  for (let lane = 0; lane < lanes; lane++) starts[lane + 1] += starts[lane];
  return starts;
}

function levelOf(
  { means, covariance, size, columns }: UnitSmoother,
  program: FleetProgram,
  unit: number,
  x: number,
  effects: SharedEffects,
): { level: number; variance: number } {
  const first = program.unitColumns[unit];
  const total = columnsOf(program.shared);
  let level = means[x];
  let variance = covariance[x * size + x];
  for (let j = 1; j < columns; j++) {
    const a = means[j * size + x];
    if (a === 0) continue;
    const row = program.columns[first + j - 1] * total;
    level -= a * effects.values[program.columns[first + j - 1]];
    for (let k = 1; k < columns; k++)
      variance += a * means[k * size + x] * effects.covariance[row + program.columns[first + k - 1]];
  }
  return { level, variance };
}
