import { factorCholesky, solveLower, solveUpper } from '../statistics/cholesky.ts';
import { blendOf } from './blend.ts';
import { type FleetProgram, STEP } from './fleet-program.ts';
import type { Spread } from './spread.ts';
import { UnitFilter } from './unit-filter.ts';

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
  /** Filtered states before and after each step that is no reading, one after another. */
  #history: Float64Array = new Float64Array(0);
  #room = 0;
  #scratch: Scratch = scratchFor(1);

  /** Calls `visit` for every reading's step, last first, with `means` and `covariance` as of just after it. */
  run(program: FleetProgram, unit: number, spread: Spread, visit: (step: number) => void): void {
    const from = program.unitSteps[unit];
    const to = program.unitSteps[unit + 1];
    this.#forward(program, unit, spread, from, to);
    const { size, columns } = this;
    this.#ensureState();
    this.means.set(this.#filter.means.subarray(0, size * columns));
    this.covariance.set(this.#filter.covariance.subarray(0, size * size));
    let turn = this.#turns(program, from, to);
    for (let step = to - 1; step >= from; step--) {
      const kind = program.kind[step];
      if (kind === STEP.read || kind === STEP.set || kind === STEP.left) visit(step);
      if (kind !== STEP.read) this.#backward(--turn, program, step, spread);
    }
  }

  #turns({ kind }: FleetProgram, from: number, to: number): number {
    let turns = 0;
    for (let step = from; step < to; step++) if (kind[step] !== STEP.read) turns++;
    return turns;
  }

  #ensureState(): void {
    const { size, columns } = this;
    if (this.means.length < size * columns) this.means = new Float64Array(size * columns);
    if (this.covariance.length < size * size) this.covariance = new Float64Array(size * size);
    if (this.#scratch.size !== size) this.#scratch = scratchFor(size);
  }

  #forward(program: FleetProgram, unit: number, spread: Spread, from: number, to: number): void {
    const filter = this.#filter;
    filter.begin(program, unit);
    this.size = filter.size;
    this.columns = filter.stride;
    this.#room = this.size * (this.columns + this.size);
    const needed = 2 * this.#room * this.#turns(program, from, to);
    if (this.#history.length < needed) this.#history = new Float64Array(needed);
    let at = 0;
    for (let step = from; step < to; step++) {
      const kind = program.kind[step];
      if (kind === STEP.read) {
        filter.take(program, unit, step, spread);
        continue;
      }
      at = this.#keep(at);
      filter.take(program, unit, step, spread);
      // What a new level leaves alone is not changed by its own reading: the state before serves as the predicted one.
      if (kind === STEP.set || kind === STEP.left) this.#history.copyWithin(at, at - this.#room, at);
      else this.#keep(at);
      at += this.#room;
    }
  }

  #keep(at: number): number {
    const { size, columns } = this;
    this.#history.set(this.#filter.means.subarray(0, size * columns), at);
    this.#history.set(this.#filter.covariance.subarray(0, size * size), at + size * columns);
    return at + this.#room;
  }

  #backward(turn: number, program: FleetProgram, step: number, spread: Spread): void {
    const { size, columns, means, covariance } = this;
    const history = this.#history;
    const meansBefore = 2 * turn * this.#room;
    const before = meansBefore + size * columns;
    const meansAfter = meansBefore + this.#room;
    const after = meansAfter + size * columns;
    const { kept, gain, line, product } = this.#scratch;
    const count = keptStates(program, step, size, history, after, kept);
    fillGain(this.#scratch, count, size, history, before, after, motionOf(program, step, spread));
    for (let j = 0; j < columns; j++) {
      const row = j * size;
      for (let i = 0; i < count; i++) line[i] = means[row + kept[i]] - history[meansAfter + row + kept[i]];
      for (let m = 0; m < size; m++) {
        let sum = history[meansBefore + row + m];
        for (let i = 0; i < count; i++) sum += gain[m * count + i] * line[i];
        means[row + m] = sum;
      }
    }
    // J (P' − P_p), then its product with Jᵀ.
    for (let m = 0; m < size; m++)
      for (let l = 0; l < count; l++) {
        let sum = 0;
        for (let i = 0; i < count; i++) {
          const place = kept[i] * size + kept[l];
          sum += gain[m * count + i] * (covariance[place] - history[after + place]);
        }
        product[m * count + l] = sum;
      }
    for (let m = 0; m < size; m++)
      for (let k = 0; k <= m; k++) {
        let sum = history[before + m * size + k];
        for (let l = 0; l < count; l++) sum += product[m * count + l] * gain[k * count + l];
        covariance[m * size + k] = sum;
        covariance[k * size + m] = sum;
      }
  }
}

interface Scratch {
  readonly size: number;
  readonly kept: Int32Array;
  readonly gain: Float64Array;
  readonly factor: Float64Array;
  readonly line: Float64Array;
  readonly product: Float64Array;
}

const scratchFor = (size: number): Scratch => ({
  size,
  kept: new Int32Array(size),
  gain: new Float64Array(size * size),
  factor: new Float64Array(size * size),
  line: new Float64Array(size),
  product: new Float64Array(size * size),
});

/**
 * States that a step carries on: time keeps levels and rates, a new level all but that level, new hardware neither. A state
 * without uncertainty (a lane not yet begun) is left out. Returns how many there are.
 */
function keptStates(
  program: FleetProgram,
  step: number,
  size: number,
  history: Float64Array,
  after: number,
  kept: Int32Array,
): number {
  const kind = program.kind[step];
  const x = 2 * program.lane[step];
  const end = kind === STEP.visit ? size - 1 : size;
  const fresh = kind === STEP.set || kind === STEP.left || kind === STEP.renew;
  let count = 0;
  for (let state = 0; state < end; state++) {
    if (fresh && (state === x || (kind === STEP.renew && state === x + 1))) continue;
    if (history[after + state * size + state] > 1e-14) kept[count++] = state;
  }
  return count;
}

/** How a step moves what it keeps: levels by their rate over the years, or one level toward an aim. */
interface Motion {
  readonly years: number;
  readonly level: number;
  readonly keep: number;
  readonly share: number;
}

const STILL: Motion = { years: 0, level: -1, keep: 1, share: 0 };

function motionOf(program: FleetProgram, step: number, spread: Spread): Motion {
  if (program.kind[step] === STEP.visit) return { ...STILL, years: program.value[step] };
  if (program.kind[step] !== STEP.aim) return STILL;
  const { keep, share } = blendOf(program, step, spread);
  return { years: 0, level: 2 * program.lane[step], keep, share };
}

/** J, size × count: Cov(state before, state predicted) times the predicted covariance's inverse. */
function fillGain(
  { kept, gain, factor, line }: Scratch,
  count: number,
  size: number,
  history: Float64Array,
  before: number,
  after: number,
  motion: Motion,
): void {
  for (let i = 0; i < count; i++) {
    for (let l = 0; l <= i; l++) factor[i * count + l] = history[after + kept[i] * size + kept[l]];
    factor[i * count + i] *= 1 + 1e-12;
  }
  if (Number.isNaN(factorCholesky(factor, count))) {
    gain.fill(0);
    return;
  }
  for (let m = 0; m < size; m++) {
    const row = before + m * size;
    for (let i = 0; i < count; i++) {
      const state = kept[i];
      if (state === motion.level) line[i] = motion.keep * history[row + state] - motion.share * history[row + size - 1];
      // A level is carried on with its rate: x' = x + d·years.
      else if (state % 2 === 0 && state < size - 1)
        line[i] = history[row + state] + history[row + state + 1] * motion.years;
      else line[i] = history[row + state];
    }
    solveLower(factor, count, line);
    solveUpper(factor, count, line);
    for (let i = 0; i < count; i++) gain[m * count + i] = line[i];
  }
}
