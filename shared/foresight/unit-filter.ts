import { ln } from '../quantities/elementary.ts';
import { blendOf, readingVariance, visitVariance } from './blend.ts';
import { type FleetProgram, STEP } from './fleet-program.ts';
import type { Spread } from './spread.ts';

/**
 * Kalman filter over one unit's steps, run at once for the readings and for every shared column (the augmented filter
 * of de Jong 1991, Ann. Statist. 19, 1073-1083; Durbin and Koopman, Time Series Analysis by State Space Methods, 2nd ed.,
 * 5.7). Innovations of readings and columns give the normal equations of the shared effects exactly.
 *
 * State, per lane l: level x at 2l, rate d at 2l+1; the visit's effect v stands last. Levels start diffuse: a `set`
 * spends its reading on the level (the exact limit of an infinite prior variance), so it adds nothing to the likelihood.
 */
export class UnitFilter {
  /** States in use. */
  size = 1;
  /** Columns begun so far, the readings' own (0) included. */
  active = 1;
  /** Covariance of the state given the shared effects, row-major with stride `size`. */
  covariance: Float64Array = new Float64Array(0);
  /** Filtered readings (first `size` entries), then filtered columns one after another. */
  means: Float64Array = new Float64Array(0);
  /** Weighted products of innovations, lower triangle, stride `stride`. */
  products: Float64Array = new Float64Array(0);
  stride = 1;
  logDeterminant = 0;
  /** Readings that bear on the likelihood. */
  counted = 0;
  #gain: Float64Array = new Float64Array(0);
  #weighted: Float64Array = new Float64Array(0);
  #innovation: Float64Array = new Float64Array(0);

  /** Starts a unit: nothing known of any level, rates as their class's. */
  begin(program: FleetProgram, unit: number): void {
    const lanes = program.unitLanes[unit + 1] - program.unitLanes[unit];
    const columns = program.unitColumns[unit + 1] - program.unitColumns[unit] + 1;
    this.#make(2 * lanes + 1, columns);
    this.active = 1;
    this.logDeterminant = 0;
    this.counted = 0;
    this.covariance.fill(0, 0, this.size * this.size);
    this.means.fill(0, 0, this.size * columns);
    this.products.fill(0, 0, columns * columns);
  }

  /** Room for so many states and columns. */
  #make(size: number, columns: number): void {
    this.size = size;
    this.stride = columns;
    if (this.covariance.length < this.size * this.size) {
      this.covariance = new Float64Array(this.size * this.size);
      this.#gain = new Float64Array(this.size);
      this.#weighted = new Float64Array(this.size);
    }
    if (this.means.length < this.size * columns) this.means = new Float64Array(this.size * columns);
    if (this.products.length < columns * columns) {
      this.products = new Float64Array(columns * columns);
    }
    if (this.#innovation.length < columns) this.#innovation = new Float64Array(columns);
  }

  /** Runs all steps of a unit. */
  run(program: FleetProgram, unit: number, spread: Spread): void {
    this.begin(program, unit);
    for (let step = program.unitSteps[unit]; step < program.unitSteps[unit + 1]; step++)
      this.take(program, unit, step, spread);
  }

  take(program: FleetProgram, unit: number, step: number, spread: Spread): void {
    const x = 2 * program.lane[step];
    switch (program.kind[step]) {
      case STEP.visit:
        this.#advance(program.value[step], spread.wander, spread.rateWander);
        this.#visit(visitVariance(program, step, spread), spread.zone > 0 ? program.biasColumn[step] : -1);
        break;
      case STEP.read:
        if (program.extra[step] === 1 && spread.settling > 0) this.#readSecond(program, step, x, spread);
        else {
          this.#innovate(program, step, x, program.value[step], 1, 1, 1);
          this.#read(x, readingVariance(program, step, spread));
        }
        break;
      case STEP.set:
      case STEP.left:
      case STEP.aim: {
        const { keep, value, share, offsetShare, variance } = blendOf(program, step, spread);
        this.#innovate(program, step, x, value, 0, share, offsetShare);
        this.#blend(x, keep, share, variance);
        break;
      }
      case STEP.widen:
        this.covariance[x * this.size + x] += spread.unrecorded * spread.unrecorded + program.extra[step];
        break;
      case STEP.bend:
        this.loosen(program.lane[step], program.value[step]);
        break;
      default:
        this.#renew(x, program.laneClass[program.unitLanes[unit] + program.lane[step]], spread.rate);
    }
  }

  /** Lets go a lane's rate: what it becomes is what it was and a normal amount of the deviation `size`. */
  loosen(lane: number, size: number): void {
    const d = 2 * lane + 1;
    this.covariance[d * this.size + d] += size * size;
  }

  /** Takes over another filter's state. */
  copy(other: UnitFilter): void {
    const { size, stride, active, logDeterminant, counted } = other;
    this.#make(size, stride);
    this.active = active;
    this.logDeterminant = logDeterminant;
    this.counted = counted;
    this.covariance.set(other.covariance.subarray(0, size * size));
    // Of the columns not begun yet nothing is carried along, and they begin at nothing.
    this.means.fill(0, size * active, size * stride);
    this.products.fill(0, stride * active, stride * stride);
    this.means.set(other.means.subarray(0, size * active));
    this.products.set(other.products.subarray(0, stride * active));
  }

  /** Every level moves at its rate and wanders. */
  #advance(years: number, wander: number, rateWander: number): void {
    if (years === 0) return;
    const { size, covariance: p, means } = this;
    const last = size - 1;
    for (let j = 0; j < this.active; j++)
      for (let x = 0; x < last; x += 2) means[j * size + x] += means[j * size + x + 1] * years;
    // x' = x + d t on the rows, then on the columns.
    for (let x = 0; x < last; x += 2) for (let m = 0; m < size; m++) p[x * size + m] += p[(x + 1) * size + m] * years;
    for (let m = 0; m < size; m++) for (let x = 0; x < last; x += 2) p[m * size + x] += p[m * size + x + 1] * years;
    const turn = rateWander * rateWander * years;
    for (let x = 0; x < last; x += 2) {
      p[x * size + x] += wander * wander * years + (turn * years * years) / 3;
      p[x * size + x + 1] += (turn * years) / 2;
      p[(x + 1) * size + x] += (turn * years) / 2;
      p[(x + 1) * size + x + 1] += turn;
    }
  }

  /** @param zoneMonth column of what the visit's zone and month add to its effect, -1 for none */
  #visit(variance: number, zoneMonth: number): void {
    const { size, covariance: p, means } = this;
    const v = size - 1;
    for (let m = 0; m < size; m++) {
      p[v * size + m] = 0;
      p[m * size + v] = 0;
    }
    p[v * size + v] = variance;
    for (let j = 0; j < this.active; j++) means[j * size + v] = 0;
    if (zoneMonth < 0) return;
    this.#begin(zoneMonth);
    // As with a mean rate, the opposite sign.
    means[(zoneMonth + 1) * size + v] = -1;
  }

  #renew(x: number, classColumn: number, rate: number): void {
    const { size, covariance: p, means } = this;
    const d = x + 1;
    for (let m = 0; m < size; m++) {
      p[d * size + m] = 0;
      p[m * size + d] = 0;
      p[x * size + m] = 0;
      p[m * size + x] = 0;
    }
    p[d * size + d] = rate * rate;
    for (let j = 0; j < this.active; j++) {
      means[j * size + d] = 0;
      means[j * size + x] = 0;
    }
    this.#begin(classColumn);
    // The state is "readings less columns times effects": a mean rate enters with the opposite sign.
    means[(classColumn + 1) * size + d] = -1;
  }

  /** Columns are numbered in the order of first need, so that only those begun are carried along. */
  #begin(column: number): void {
    if (column + 2 > this.active) this.active = column + 2;
  }

  /** Readings and columns less `share` of the visit's effect and `held` of the level as they stand. */
  #innovate(
    program: FleetProgram,
    step: number,
    x: number,
    value: number,
    held: number,
    share: number,
    offsetShare: number,
  ): void {
    const bias = program.biasColumn[step];
    const offset = program.offsetColumn[step];
    if (bias >= 0) this.#begin(bias);
    if (offset >= 0) this.#begin(offset);
    const { size, means, active } = this;
    const innovation = this.#innovation;
    const v = size - 1;
    for (let j = 0; j < active; j++) {
      const seen = j === 0 ? value : j - 1 === bias ? share : j - 1 === offset ? offsetShare : 0;
      innovation[j] = seen - share * means[j * size + v] - held * means[j * size + x];
    }
  }

  /**
   * The second cell of a reading, whose noise w₂ shares s² with that of the first, w₁: y₂ − ρ y₁ with ρ = s²/Var(w₁) has a
   * noise of its own, so that it may be taken after the first; divided by 1 − ρ it is a reading of the level.
   */
  #readSecond(program: FleetProgram, step: number, x: number, spread: Spread): void {
    const { size, means } = this;
    const [bias, offset, other] = [program.biasColumn[step], program.offsetColumn[step], program.biasColumn[step - 1]];
    for (const column of [bias, offset]) if (column >= 0) this.#begin(column);
    const shared = spread.settling * spread.settling;
    const share = shared / readingVariance(program, step - 1, spread);
    const kept = 1 - share;
    const v = size - 1;
    for (let j = 0; j < this.active; j++) {
      let seen = j === 0 ? program.value[step] - share * program.value[step - 1] : 0;
      if (j > 0 && (j - 1 === bias || j - 1 === offset)) seen += 1;
      if (j > 0 && j - 1 === other) seen -= share;
      this.#innovation[j] = seen / kept - means[j * size + v] - means[j * size + x];
    }
    this.#read(x, (readingVariance(program, step, spread) - share * shared) / (kept * kept));
    this.logDeterminant += 2 * ln(kept);
  }

  /** A new level: x' = keep·x + innovated − share·v − noise. */
  #blend(x: number, keep: number, share: number, noise: number): void {
    const { size, covariance: p, means } = this;
    const v = size - 1;
    const own =
      keep * keep * p[x * size + x] - 2 * keep * share * p[x * size + v] + share * share * p[v * size + v] + noise;
    for (let m = 0; m < size; m++) {
      if (m === x) continue;
      p[m * size + x] = keep * p[m * size + x] - share * p[m * size + v];
      p[x * size + m] = p[m * size + x];
    }
    p[x * size + x] = own;
    for (let j = 0; j < this.active; j++) means[j * size + x] = keep * means[j * size + x] + this.#innovation[j];
  }

  #read(x: number, noise: number): void {
    const { size, covariance: p, means, active, products, stride } = this;
    const v = size - 1;
    const innovation = this.#innovation;
    const weighted = this.#weighted;
    const gain = this.#gain;
    for (let m = 0; m < size; m++) weighted[m] = p[m * size + x] + p[m * size + v];
    const variance = weighted[x] + weighted[v] + noise;
    const inverse = 1 / variance;
    for (let m = 0; m < size; m++) gain[m] = weighted[m] * inverse;
    for (let m = 0; m < size; m++) {
      const g = gain[m];
      for (let k = 0; k <= m; k++) {
        const value = p[m * size + k] - g * weighted[k];
        p[m * size + k] = value;
        p[k * size + m] = value;
      }
    }
    for (let j = 0; j < active; j++) {
      const e = innovation[j];
      if (e === 0) continue;
      for (let m = 0; m < size; m++) means[j * size + m] += gain[m] * e;
      const scaled = e * inverse;
      for (let k = 0; k <= j; k++) products[j * stride + k] += scaled * innovation[k];
    }
    this.logDeterminant += ln(variance);
    this.counted++;
  }
}
