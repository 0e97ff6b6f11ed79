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
import { liveSteps } from './live-steps.ts';
import type { Planned, Reach } from './planned.ts';
import type { Program } from './program.ts';
import { reachOf, reachOfFunction } from './reach.ts';
import type { Sources } from './sources.ts';
import type { Step } from './step.ts';
import { weigh } from './weigh.ts';

type Operator = Exclude<Step, { op: 'input' | 'constant' | 'text-is' | 'group' | 'apply' }>;
type Made = Pick<Planned, 'buffer' | 'slopes'>;
type PassKernel = (out: Float64Array, x: Float64Array, y: Float64Array, z: Float64Array, n: number) => void;

const CONDITIONS: Readonly<Record<'and' | 'or' | 'not' | 'known', PassKernel>> = {
  and: (out, x, y, _z, n) => kernel.and(out, x, y, n),
  or: (out, x, y, _z, n) => kernel.or(out, x, y, n),
  not: (out, x, _y, _z, n) => kernel.not(out, x, n),
  known: (out, x, _y, _z, n) => kernel.known(out, x, n),
};

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
    const reach: Reach = new Map([[name, 'up']]);
    const isNeverNegative = this.sources.nonNegative?.has(name) ?? false;
    const spread = this.withUncertainty ? this.sources.uncertainties.get(name) : undefined;
    if (!spread) return { buffer, slopes: NO_SLOPES, reach, isNeverNegative };
    const number = this.uncertain.push({ name, buffer: this.#load(spread) }) - 1;
    return { buffer, slopes: new Map([[number, { buffer: ONES, scale: 1 }]]), reach, isNeverNegative };
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
    return { buffer, slopes: NO_SLOPES, reach: new Map(), isNeverNegative: value >= 0 };
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
    return { buffer, slopes: NO_SLOPES, reach: new Map(), isNeverNegative: true };
  }

  #apply(step: Extract<Step, { op: 'apply' }>): Planned {
    const { values, withPartials, helpers = 0 } = step.function;
    const all = step.args.map((arg) => this.#of(arg));
    const args = all.slice(0, all.length - helpers);
    const buffer = this.fresh();
    const inputs = all.map((arg) => arg.buffer);
    const reach = reachOfFunction(args, step.function);
    if (args.every(({ slopes }) => slopes.size === 0)) {
      this.emit({
        reads: inputs,
        writes: [buffer],
        link: (at) => {
          const [out, from] = [at(buffer), inputs.map(at)];
          return (n) => values(out, from, n);
        },
      });
      return { buffer, slopes: NO_SLOPES, ...reach };
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
    return { buffer, slopes, ...reach };
  }

  #operator(step: Operator): Planned {
    const args = step.args.map((arg) => this.#of(arg));
    switch (step.op) {
      case 'affine':
      case 'add':
      case 'subtract':
      case 'multiply':
      case 'divide':
        return { ...this.#arithmetic(step, args), ...reachOf(step, args) };
      case 'choose':
      case 'otherwise':
      case 'weigh':
        return { ...this.#selection(step, args), ...reachOf(step, args) };
      default:
        return this.#condition(step, args);
    }
  }

  /** A fresh buffer, filled by `run` from the arguments' buffers. */
  #pass(args: readonly Planned[], run: PassKernel): number {
    const buffer = this.fresh();
    const ids = args.map((arg) => arg.buffer);
    this.emit({
      reads: ids,
      writes: [buffer],
      link: (at) => {
        const [out, x, y, z] = [at(buffer), at(ids[0]), at(ids[1] ?? ids[0]), at(ids[2] ?? ids[0])];
        return (n) => run(out, x, y, z, n);
      },
    });
    return buffer;
  }

  #arithmetic(
    step: Extract<Step, { op: 'affine' | 'add' | 'subtract' | 'multiply' | 'divide' }>,
    args: readonly Planned[],
  ): Made {
    const [a, b] = args;
    switch (step.op) {
      case 'affine': {
        const { factor, offset } = step;
        const buffer = this.#pass(args, (out, x, _y, _z, n) => kernel.affine(out, x, factor, offset, n));
        return { buffer, slopes: scaleSlopes(a.slopes, factor) };
      }
      case 'add': {
        const buffer = this.#pass(args, (out, x, y, _z, n) => kernel.add(out, x, y, n));
        return { buffer, slopes: addSlopes(a.slopes, b.slopes, this) };
      }
      case 'subtract': {
        const buffer = this.#pass(args, (out, x, y, _z, n) => kernel.subtract(out, x, y, n));
        const slopes = addSlopes(a.slopes, scaleSlopes(b.slopes, -1), this);
        return { buffer, slopes };
      }
      case 'multiply': {
        const buffer = this.#pass(args, (out, x, y, _z, n) => kernel.multiply(out, x, y, n));
        return { buffer, slopes: chainTwo(a.slopes, b.buffer, b.slopes, a.buffer, this) };
      }
      default: {
        const buffer = this.#pass(args, (out, x, y, _z, n) => kernel.divide(out, x, y, n));
        return { buffer, slopes: quotientSlopes(a, b, buffer, this) };
      }
    }
  }

  #selection(step: Extract<Step, { op: 'choose' | 'otherwise' | 'weigh' }>, args: readonly Planned[]): Made {
    const [a, b, c] = args;
    switch (step.op) {
      case 'choose': {
        const buffer = this.#pass(args, kernel.choose);
        const slopes = branchSlopes(b.slopes, c.slopes, a.buffer, kernel.chooseSlope, this);
        return { buffer, slopes };
      }
      case 'otherwise': {
        const buffer = this.#pass(args, (out, x, y, _z, n) => kernel.otherwise(out, x, y, n));
        const slopes = branchSlopes(a.slopes, b.slopes, a.buffer, kernel.otherwiseSlope, this);
        return { buffer, slopes };
      }
      default: {
        const buffer = this.fresh();
        return { buffer, slopes: weigh(buffer, a, b, this) };
      }
    }
  }

  /**
   * A condition has no slope, and it reaches no bound further: it holds or fails over the whole of a bound's range, or
   * it is unknown (doubtBounds sees to that).
   */
  #condition(
    step: Extract<Step, { op: 'compare' | 'and' | 'or' | 'not' | 'known' }>,
    args: readonly Planned[],
  ): Planned {
    const settled = (buffer: number): Planned => ({
      buffer,
      slopes: NO_SLOPES,
      reach: new Map(),
      isNeverNegative: true,
    });
    if (step.op === 'compare') {
      const { operator } = step;
      const buffer = this.#pass(args, (out, x, y, _z, n) => kernel.compare(out, x, y, operator, n));
      doubtBounds(buffer, operator, [args[0], args[1]], this.sources.bounds, this.uncertain, this.context, this);
      return settled(buffer);
    }
    return settled(this.#pass(args, CONDITIONS[step.op]));
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
