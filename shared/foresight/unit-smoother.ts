import { factorCholesky, solveLower, solveUpper } from '../statistics/cholesky.ts';
import { type FleetProgram, STEP } from './fleet-program.ts';
import type { Spread } from './spread.ts';
import { blendOf, UnitFilter } from './unit-filter.ts';

/** The filter's state before and after a step that is no reading. */
interface Turn {
  readonly meansBefore: Float64Array;
  readonly before: Float64Array;
  readonly meansAfter: Float64Array;
  readonly after: Float64Array;
}

/**
 * Fixed-interval smoother over one unit's steps (Rauch, Tung and Striebel 1965, AIAA J. 3), for the readings and every
 * shared column at once, so that the effects' uncertainty can be added exactly.
 *
 * Backward over a step that is no reading: s = s_f + J (s' − s_p), P = P_f + J (P' − P_p) Jᵀ with J = Cov(s_f, s_p) P_p⁻¹,
 * taken over those states that the step keeps: a level that starts anew tells nothing about the one before it.
 */
export class UnitSmoother {
  readonly #filter = new UnitFilter();
  size = 1;
  /** Columns, the readings' own included. */
  columns = 1;
  /** Smoothed state at the step just visited: readings, then columns; and its covariance given the shared effects. */
  means: Float64Array = new Float64Array(0);
  covariance: Float64Array = new Float64Array(0);

  /** Calls `visit` for every reading's step, last first, with `means` and `covariance` as of just after it. */
  run(program: FleetProgram, unit: number, spread: Spread, visit: (step: number) => void): void {
    const from = program.unitSteps[unit];
    const to = program.unitSteps[unit + 1];
    const turns = this.#forward(program, unit, spread);
    const { size, columns } = this;
    this.means = this.#filter.means.slice(0, size * columns);
    this.covariance = this.#filter.covariance.slice(0, size * size);
    for (let step = to - 1; step >= from; step--) {
      const turn = turns[step - from];
      const kind = program.kind[step];
      if (kind === STEP.read || kind === STEP.set || kind === STEP.left) visit(step);
      if (!turn) continue;
      this.#backward(turn, keptStates(program, step, size), motionOf(program, step, spread));
    }
  }

  #forward(program: FleetProgram, unit: number, spread: Spread): (Turn | undefined)[] {
    const filter = this.#filter;
    filter.begin(program, unit);
    this.size = filter.size;
    this.columns = filter.stride;
    const means = (): Float64Array => filter.means.slice(0, this.size * this.columns);
    const covariance = (): Float64Array => filter.covariance.slice(0, this.size * this.size);
    const turns: (Turn | undefined)[] = [];
    for (let step = program.unitSteps[unit]; step < program.unitSteps[unit + 1]; step++) {
      if (program.kind[step] === STEP.read) {
        filter.take(program, unit, step, spread);
        turns.push(undefined);
        continue;
      }
      const meansBefore = means();
      const before = covariance();
      filter.take(program, unit, step, spread);
      // What a `set` keeps is not changed by its own reading, so the state before it serves as the predicted one too.
      const set = program.kind[step] === STEP.set || program.kind[step] === STEP.left;
      turns.push({ meansBefore, before, meansAfter: set ? meansBefore : means(), after: set ? before : covariance() });
    }
    return turns;
  }

  #backward({ meansBefore, before, meansAfter, after }: Turn, kept: readonly number[], motion: Motion): void {
    const { size, columns } = this;
    const usable = kept.filter((state) => after[state * size + state] > 1e-14);
    const count = usable.length;
    const gain = smootherGain(before, after, usable, size, motion);
    const meanShift = new Float64Array(count);
    const means = meansBefore.slice();
    for (let j = 0; j < columns; j++) {
      usable.forEach((state, i) => {
        meanShift[i] = this.means[j * size + state] - meansAfter[j * size + state];
      });
      for (let m = 0; m < size; m++)
        for (let i = 0; i < count; i++) means[j * size + m] += gain[m * count + i] * meanShift[i];
    }
    const covariance = before.slice();
    for (let m = 0; m < size; m++)
      for (let k = 0; k < size; k++)
        for (let i = 0; i < count; i++)
          for (let l = 0; l < count; l++) {
            const place = usable[i] * size + usable[l];
            covariance[m * size + k] +=
              gain[m * count + i] * (this.covariance[place] - after[place]) * gain[k * count + l];
          }
    this.means = means;
    this.covariance = covariance;
  }
}

/** How a step moves what it keeps: levels by their rate over the years, or one level toward an aim. */
interface Motion {
  readonly years: number;
  readonly level: number;
  readonly keep: number;
  readonly share: number;
}

function motionOf(program: FleetProgram, step: number, spread: Spread): Motion {
  if (program.kind[step] === STEP.visit) return { years: program.value[step], level: -1, keep: 1, share: 0 };
  if (program.kind[step] !== STEP.aim) return { years: 0, level: -1, keep: 1, share: 0 };
  const { keep, share } = blendOf(program, step, spread);
  return { years: 0, level: 2 * program.lane[step], keep, share };
}

/** Covariance of state m before the step with a kept state after it. */
function carried(before: Float64Array, m: number, state: number, size: number, motion: Motion): number {
  const own = before[m * size + state];
  if (state === motion.level) return motion.keep * own - motion.share * before[m * size + size - 1];
  return state % 2 === 0 && state < size - 1 ? own + before[m * size + state + 1] * motion.years : own;
}

/** States that a step carries on: time keeps levels and rates, a new level all but that level, new hardware neither. */
function keptStates(program: FleetProgram, step: number, size: number): number[] {
  const x = 2 * program.lane[step];
  const all = Array.from({ length: size }, (_, state) => state);
  switch (program.kind[step]) {
    case STEP.visit:
      return all.slice(0, size - 1);
    case STEP.set:
    case STEP.left:
      return all.filter((state) => state !== x);
    case STEP.renew:
      return all.filter((state) => state !== x && state !== x + 1);
    default:
      return all;
  }
}

/** J, size × usable: Cov(state before, state predicted) times the predicted covariance's inverse. */
function smootherGain(
  before: Float64Array,
  after: Float64Array,
  usable: readonly number[],
  size: number,
  motion: Motion,
): Float64Array {
  const count = usable.length;
  const gain = new Float64Array(size * count);
  const factor = new Float64Array(count * count);
  usable.forEach((row, i) => {
    usable.forEach((column, l) => {
      factor[i * count + l] = after[row * size + column];
    });
    factor[i * count + i] *= 1 + 1e-12;
  });
  if (Number.isNaN(factorCholesky(factor, count))) return gain;
  const line = new Float64Array(count);
  for (let m = 0; m < size; m++) {
    usable.forEach((state, i) => {
      line[i] = carried(before, m, state, size, motion);
    });
    solveLower(factor, count, line);
    solveUpper(factor, count, line);
    gain.set(line, m * count);
  }
  return gain;
}
