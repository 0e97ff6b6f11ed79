import {
  addSlopes,
  branchSlopes,
  chainTwo,
  quotientSlopes,
  scaleSlopes,
  timesBuffer,
  type Writer,
} from './differentiate.ts';
import { doubtBounds } from './doubt-bounds.ts';
import { type BlockContext, type Instruction, NO_SLOPES, ONES, type Slopes, ZEROS } from './instruction.ts';
import * as kernel from './kernels.ts';
import type { Planned } from './planned.ts';
import type { Program } from './program.ts';
import type { Sources } from './sources.ts';
import type { Step } from './step.ts';

/**
 * The passes over a block that evaluate a program, and the buffers that they need. Derivatives run forward with the
 * values: each step keeps those with respect to the uncertain inputs that reach it, and no others.
 */
export class Plan implements Writer {
  readonly instructions: Instruction[] = [];
  /** Buffers that are filled once and never change: ones, zeros, constants. */
  readonly constants = new Map<number, number>([
    [ONES, 1],
    [ZEROS, 0],
  ]);
  /** Uncertain inputs in the order of their numbers, each with the buffer of its standard uncertainty. */
  readonly uncertain: { readonly name: string; readonly buffer: number }[] = [];
  readonly planned = new Map<number, Planned>();
  #buffers = 2;

  constructor(
    program: Program,
    private readonly sources: Sources,
    private readonly context: BlockContext,
    /** Without it no derivative is formed. */
    private readonly withUncertainty: boolean,
  ) {
    const live = liveSteps(program);
    program.steps.forEach((step, index) => {
      if (live.has(index)) this.planned.set(index, this.#plan(step));
    });
  }

  get buffers(): number {
    return this.#buffers;
  }

  fresh(): number {
    return this.#buffers++;
  }

  emit(instruction: Instruction): void {
    this.instructions.push(instruction);
  }

  #of(step: number): Planned {
    return this.planned.get(step) as Planned;
  }

  #plan(step: Step): Planned {
    switch (step.op) {
      case 'input':
        return this.#input(step.name);
      case 'constant':
        return this.#constant(step.value);
      case 'text-is':
        return this.#textIs(step.name, step.text);
      case 'group':
        throw new RangeError('a value per group is worked out before the program runs');
      case 'apply':
        return this.#apply(step);
      default:
        return this.#operator(step);
    }
  }

  #input(name: string): Planned {
    const source = this.sources.numbers.get(name);
    if (!source) throw new RangeError(`no source for ${name}`);
    const buffer = this.#load(source);
    const reach = new Map([[name, true]]);
    const spread = this.withUncertainty ? this.sources.uncertainties.get(name) : undefined;
    if (!spread) return { buffer, slopes: NO_SLOPES, reach };
    const number = this.uncertain.push({ name, buffer: this.#load(spread) }) - 1;
    return { buffer, slopes: new Map([[number, { buffer: ONES, scale: 1 }]]), reach };
  }

  #load(source: (from: number, n: number, out: Float64Array) => void): number {
    const buffer = this.fresh();
    const { context } = this;
    this.emit({
      reads: [],
      writes: [buffer],
      link: (at) => {
        const out = at(buffer);
        return (n) => source(context.from, n, out);
      },
    });
    return buffer;
  }

  #constant(value: number): Planned {
    const buffer = this.fresh();
    this.constants.set(buffer, value);
    return { buffer, slopes: NO_SLOPES, reach: new Map() };
  }

  #textIs(name: string, text: string): Planned {
    const column = this.sources.texts.get(name);
    if (!column) throw new RangeError(`no column of text ${name}`);
    const { codes, levels } = column;
    const code = levels.indexOf(text);
    const buffer = this.#load((from, n, out) => {
      for (let i = 0; i < n; i++) {
        const found = codes[from + i];
        out[i] = found < 0 ? Number.NaN : found === code ? 1 : 0;
      }
    });
    return { buffer, slopes: NO_SLOPES, reach: new Map() };
  }

  #apply(step: Extract<Step, { op: 'apply' }>): Planned {
    const { values, withPartials, monotone, helpers = 0 } = step.function;
    const all = step.args.map((arg) => this.#of(arg));
    const args = all.slice(0, all.length - helpers);
    const buffer = this.fresh();
    const inputs = all.map((arg) => arg.buffer);
    const reach = reachOf(args, monotone);
    if (args.every(({ slopes }) => slopes.size === 0)) {
      this.emit({
        reads: inputs,
        writes: [buffer],
        link: (at) => {
          const [out, from] = [at(buffer), inputs.map(at)];
          return (n) => values(out, from, n);
        },
      });
      return { buffer, slopes: NO_SLOPES, reach };
    }
    const partials = args.map(() => this.fresh());
    this.emit({
      reads: inputs,
      writes: [buffer, ...partials],
      link: (at) => {
        const [out, slopes, from] = [at(buffer), partials.map(at), inputs.map(at)];
        return (n) => withPartials(out, slopes, from, n);
      },
    });
    const slopes =
      args.length === 1
        ? new Map([...args[0].slopes].map(([input, slope]) => [input, timesBuffer(slope, partials[0], this)]))
        : chainTwo(args[0].slopes, partials[0], args[1].slopes, partials[1], this);
    return { buffer, slopes, reach };
  }

  #operator(step: Exclude<Step, { op: 'input' | 'constant' | 'text-is' | 'group' | 'apply' }>): Planned {
    const args = step.args.map((arg) => this.#of(arg));
    const [a, b, c] = args;
    const buffer = this.fresh();
    const ids = args.map((arg) => arg.buffer);
    const pass = (
      run: (out: Float64Array, x: Float64Array, y: Float64Array, z: Float64Array, n: number) => void,
    ): void =>
      this.emit({
        reads: ids,
        writes: [buffer],
        link: (at) => {
          const [out, x, y, z] = [at(buffer), at(ids[0]), at(ids[1] ?? ids[0]), at(ids[2] ?? ids[0])];
          return (n) => run(out, x, y, z, n);
        },
      });
    const plain = (monotone: readonly boolean[]): Planned => ({
      buffer,
      slopes: NO_SLOPES,
      reach: reachOf(args, monotone),
    });
    // A condition that holds or fails does so over the whole of a bound's range, else it is unknown: see doubtBounds.
    const settled: Planned = { buffer, slopes: NO_SLOPES, reach: new Map() };
    switch (step.op) {
      case 'affine': {
        const { factor, offset } = step;
        pass((out, x, _y, _z, n) => kernel.affine(out, x, factor, offset, n));
        return { ...plain([true]), slopes: scaleSlopes(a.slopes, factor) };
      }
      case 'add':
        pass((out, x, y, _z, n) => kernel.add(out, x, y, n));
        return { ...plain([true, true]), slopes: addSlopes(a.slopes, b.slopes, this) };
      case 'multiply':
        pass((out, x, y, _z, n) => kernel.multiply(out, x, y, n));
        return { ...plain([true, true]), slopes: chainTwo(a.slopes, b.buffer, b.slopes, a.buffer, this) };
      case 'divide':
        pass((out, x, y, _z, n) => kernel.divide(out, x, y, n));
        return { ...plain([true, false]), slopes: this.#quotient(buffer, a, b) };
      case 'compare': {
        const { operator } = step;
        pass((out, x, y, _z, n) => kernel.compare(out, x, y, operator, n));
        doubtBounds(buffer, operator, [a, b], this.sources.bounds, this.uncertain, this.context, this);
        return settled;
      }
      case 'and':
        pass((out, x, y, _z, n) => kernel.and(out, x, y, n));
        return settled;
      case 'or':
        pass((out, x, y, _z, n) => kernel.or(out, x, y, n));
        return settled;
      case 'not':
        pass((out, x, _y, _z, n) => kernel.not(out, x, n));
        return settled;
      case 'known':
        pass((out, x, _y, _z, n) => kernel.known(out, x, n));
        return settled;
      case 'choose':
        pass(kernel.choose);
        return {
          ...plain([true, true, true]),
          slopes: branchSlopes(b.slopes, c.slopes, a.buffer, kernel.chooseSlope, this),
        };
      case 'otherwise':
        pass((out, x, y, _z, n) => kernel.otherwise(out, x, y, n));
        return {
          ...plain([true, true]),
          slopes: branchSlopes(a.slopes, b.slopes, a.buffer, kernel.otherwiseSlope, this),
        };
      case 'weigh':
        return { ...plain([false, false]), slopes: this.#weigh(buffer, a, b) };
    }
  }

  #quotient(value: number, a: Planned, b: Planned): Slopes {
    if (a.slopes.size === 0 && b.slopes.size === 0) return NO_SLOPES;
    const inverse = this.fresh();
    this.emit({
      reads: [b.buffer],
      writes: [inverse],
      link: (at) => {
        const [out, x] = [at(inverse), at(b.buffer)];
        return (n) => kernel.reciprocal(out, x, n);
      },
    });
    return quotientSlopes(a.slopes, b.slopes, value, inverse, this);
  }

  #weigh(value: number, a: Planned, b: Planned): Slopes {
    const [va, vb, w] = [this.variance(a.slopes), this.variance(b.slopes), this.fresh()];
    this.emit({
      reads: [a.buffer, va, b.buffer, vb],
      writes: [w],
      link: (at) => {
        const [out, x, vx, y, vy] = [at(w), at(a.buffer), at(va), at(b.buffer), at(vb)];
        return (n) => kernel.weight(out, x, vx, y, vy, n);
      },
    });
    this.emit({
      reads: [w, a.buffer, b.buffer],
      writes: [value],
      link: (at) => {
        const [out, x, p, q] = [at(value), at(w), at(a.buffer), at(b.buffer)];
        return (n) => kernel.blend(out, x, p, q, n);
      },
    });
    return branchSlopes(a.slopes, b.slopes, w, kernel.blendSlope, this);
  }

  /** A buffer with the variance that the uncertain inputs make: the sum of (slope u)^2. */
  variance(slopes: Slopes): number {
    if (slopes.size === 0) return ZEROS;
    const sum = this.fresh();
    const parts = [...slopes].map(([input, slope]) => ({ slope, spread: this.uncertain[input].buffer }));
    this.emit({
      reads: parts.flatMap(({ slope, spread }) => [slope.buffer, spread]),
      writes: [sum],
      link: (at) => {
        const out = at(sum);
        const linked = parts.map(({ slope, spread }) => [at(slope.buffer), slope.scale, at(spread)] as const);
        return (n) => {
          out.fill(0, 0, n);
          for (const [d, scale, u] of linked) kernel.addVariance(out, d, scale, u, n);
        };
      },
    });
    return sum;
  }
}

/** The inputs that reach a step: monotone in one only where a single argument carries it and the operation is so in it. */
function reachOf(args: readonly Planned[], monotone: readonly boolean[]): ReadonlyMap<string, boolean> {
  const reach = new Map<string, boolean>();
  args.forEach((arg, position) => {
    for (const [name, isMonotone] of arg.reach) reach.set(name, !reach.has(name) && isMonotone && monotone[position]);
  });
  return reach;
}

function liveSteps({ steps, outputs }: Program): Set<number> {
  const live = new Set<number>();
  const stack = [...outputs.values()].map(({ step }) => step);
  for (let step = stack.pop(); step !== undefined; step = stack.pop()) {
    if (live.has(step)) continue;
    live.add(step);
    stack.push(...steps[step].args);
  }
  return live;
}
