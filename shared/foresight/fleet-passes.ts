import { askShards, type Pieces, type ShardedWork } from '../pieces.ts';
import { askBends, type LaneBends } from './bent-lanes.ts';
import { fitLanes, type LaneStates } from './fit-fleet.ts';
import { type SharedEffects, type SharedEquations, sumEquations } from './shared-effects.ts';
import { sliceProgram } from './slice-program.ts';
import type { Spread } from './spread.ts';
import { type LaneTrace, traceLanes } from './trace-lanes.ts';
import type { WrittenProgram } from './write-program.ts';

/** A pass over the fleet is cut here, whatever the number of processors: sums are rounded the same way everywhere. */
const UNITS_A_SHARD = 512;

/** What a pass needs of some units. */
type Shard = Pick<WrittenProgram, 'program' | 'stepDay'>;

type Question =
  | { readonly pass: 'equations'; readonly spread: Spread }
  | { readonly pass: 'lanes' | 'trace'; readonly spread: Spread; readonly effects: SharedEffects }
  | { readonly pass: 'bends'; readonly spread: Spread; readonly effects: SharedEffects; readonly size: number };

type Part = SharedEquations | LaneStates | LaneTrace | LaneBends;

/** Passes over all units of a fleet, a shard of units at a time. */
export type FleetPasses = ShardedWork<Question, Part>;

/** The key under which a kind lists `passShard` among its crews. */
export const FLEET_PASSES = 'fleet-passes';

/** What a helper does. */
export const passShard =
  ({ program, stepDay }: Shard) =>
  (question: Question): Part => {
    if (question.pass === 'equations') return sumEquations(program, question.spread);
    if (question.pass === 'bends') return askBends(program, question.spread, question.effects, question.size);
    if (question.pass === 'lanes') return fitLanes(program, question.spread, question.effects);
    return traceLanes({ program, stepDay }, question.spread, question.effects);
  };

export function passesOver({ program, stepDay }: Shard): FleetPasses {
  const shards: Shard[] = [];
  for (let from = 0; from < program.units; from += UNITS_A_SHARD) {
    const to = Math.min(from + UNITS_A_SHARD, program.units);
    if (program.units <= UNITS_A_SHARD) shards.push({ program, stepDay });
    else
      shards.push({
        program: sliceProgram(program, from, to),
        stepDay: stepDay.slice(program.unitSteps[from], program.unitSteps[to]),
      });
  }
  if (shards.length === 0) shards.push({ program, stepDay });
  return { name: FLEET_PASSES, work: passShard, shards };
}

/** The normal equations of what the fleet shares, summed in the order of the shards. */
export function* sumPasses(passes: FleetPasses, spread: Spread): Pieces<SharedEquations> {
  const parts = (yield* askShards(passes, { pass: 'equations', spread })) as readonly SharedEquations[];
  const [first, ...rest] = parts;
  const [matrix, right] = [first.matrix.slice(), first.right.slice()];
  let { squares, logDeterminant, counted } = first;
  for (const part of rest) {
    for (let i = 0; i < matrix.length; i++) matrix[i] += part.matrix[i];
    for (let i = 0; i < right.length; i++) right[i] += part.right[i];
    squares += part.squares;
    logDeterminant += part.logDeterminant;
    counted += part.counted;
  }
  return { columns: first.columns, matrix, right, squares, logDeterminant, counted };
}

/** See fitLanes. */
export function* fitLanePasses(passes: FleetPasses, spread: Spread, effects: SharedEffects): Pieces<LaneStates> {
  const parts = (yield* askShards(passes, { pass: 'lanes', spread, effects })) as readonly LaneStates[];
  const all = (name: keyof LaneStates): Float64Array => joined(parts.map((part) => part[name]));
  return {
    level: all('level'),
    rate: all('rate'),
    levelVariance: all('levelVariance'),
    rateVariance: all('rateVariance'),
    covariance: all('covariance'),
    offsetVariance: all('offsetVariance'),
    offsetCovariance: all('offsetCovariance'),
    ownWeight: all('ownWeight'),
  };
}

/** See askBends; steps are those of the whole fleet. */
export function* askBendPasses(
  passes: FleetPasses,
  spread: Spread,
  effects: SharedEffects,
  size: number,
): Pieces<LaneBends> {
  const parts = (yield* askShards(passes, { pass: 'bends', spread, effects, size })) as readonly LaneBends[];
  const all = (name: Exclude<keyof LaneBends, 'step' | 'stepBefore'>): Float64Array =>
    joined(parts.map((part) => part[name]));
  const steps = (name: 'step' | 'stepBefore'): Int32Array => {
    let before = 0;
    return Int32Array.from(
      parts.flatMap((part, i) => {
        const from = before;
        before += (passes.shards[i] as Shard).stepDay.length;
        return Array.from(part[name], (step) => (step < 0 ? step : step + from));
      }),
    );
  };
  return {
    apart: all('apart'),
    bent: all('bent'),
    level: all('level'),
    rate: all('rate'),
    levelVariance: all('levelVariance'),
    rateVariance: all('rateVariance'),
    covariance: all('covariance'),
    step: steps('step'),
    stepBefore: steps('stepBefore'),
  };
}

/** See traceLanes. */
export function* tracePasses(passes: FleetPasses, spread: Spread, effects: SharedEffects): Pieces<LaneTrace> {
  const parts = (yield* askShards(passes, { pass: 'trace', spread, effects })) as readonly LaneTrace[];
  const all = (name: 'day' | 'level' | 'sd' | 'sdWithOffset'): Float64Array => joined(parts.map((part) => part[name]));
  const total = parts.reduce((sum, { lane }) => sum + lane.length, 0);
  const lanes = parts.reduce((sum, { starts }) => sum + starts.length - 1, 0);
  const [lane, starts] = [new Int32Array(total), new Int32Array(lanes + 1)];
  let [points, before] = [0, 0];
  for (const part of parts) {
    for (let i = 0; i < part.lane.length; i++) lane[points + i] = part.lane[i] + before;
    for (let i = 0; i < part.starts.length; i++) starts[before + i] = part.starts[i] + points;
    points += part.lane.length;
    before += part.starts.length - 1;
  }
  return { lane, day: all('day'), level: all('level'), sd: all('sd'), sdWithOffset: all('sdWithOffset'), starts };
}

function joined(parts: readonly Float64Array[]): Float64Array {
  if (parts.length === 1) return parts[0];
  const whole = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
