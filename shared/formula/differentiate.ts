import type { Slope, Slopes } from './instruction.ts';
import { type Instruction, NO_SLOPES, ONES, ZEROS } from './instruction.ts';
import * as kernel from './kernels.ts';

/** What the rules need of the plan: fresh buffers, and a place for instructions. */
export interface Writer {
  fresh(): number;
  emit(instruction: Instruction): void;
}

/** A step's buffer and its derivatives. */
interface Sloped {
  readonly buffer: number;
  readonly slopes: Slopes;
}

/** Applies `rule` to every input that either side depends on. */
function merge(a: Slopes, b: Slopes, rule: (x: Slope | undefined, y: Slope | undefined) => Slope): Slopes {
  if (a.size === 0 && b.size === 0) return NO_SLOPES;
  const result = new Map<number, Slope>();
  for (const [input, x] of a) result.set(input, rule(x, b.get(input)));
  for (const [input, y] of b) if (!a.has(input)) result.set(input, rule(undefined, y));
  return result;
}

export function scaleSlopes(a: Slopes, factor: number): Slopes {
  if (factor === 1) return a;
  return new Map([...a].map(([input, { buffer, scale }]) => [input, { buffer, scale: scale * factor }]));
}

export function addSlopes(a: Slopes, b: Slopes, w: Writer): Slopes {
  return merge(a, b, (x, y) => {
    if (!x || !y) return (x ?? y) as Slope;
    if (x.buffer === y.buffer) return { buffer: x.buffer, scale: x.scale + y.scale };
    const out = w.fresh();
    w.emit({
      reads: [x.buffer, y.buffer],
      writes: [out],
      link: (at) => {
        const [o, p, q] = [at(out), at(x.buffer), at(y.buffer)];
        return (n) => kernel.scaledSum(o, p, x.scale, q, y.scale, n);
      },
    });
    return { buffer: out, scale: 1 };
  });
}

/** s a p, where `a` is a slope and `p` a buffer; the buffer itself where the slope is constant. */
export function timesBuffer(a: Slope, p: number, w: Writer): Slope {
  if (a.buffer === ONES) return { buffer: p, scale: a.scale };
  if (p === ONES) return a;
  const out = w.fresh();
  w.emit({
    reads: [a.buffer, p],
    writes: [out],
    link: (at) => {
      const [o, x, y] = [at(out), at(a.buffer), at(p)];
      return (n) => kernel.scaledProduct(o, x, y, 1, n);
    },
  });
  return { buffer: out, scale: a.scale };
}

/** The chain rule through two arguments with partials p and q: p da + q db. */
export function chainTwo(a: Slopes, p: number, b: Slopes, q: number, w: Writer): Slopes {
  return merge(a, b, (x, y) => {
    if (!y) return timesBuffer(x as Slope, p, w);
    if (!x) return timesBuffer(y, q, w);
    const out = w.fresh();
    w.emit({
      reads: [x.buffer, p, y.buffer, q],
      writes: [out],
      link: (at) => {
        const [o, xa, xp, ya, yq] = [at(out), at(x.buffer), at(p), at(y.buffer), at(q)];
        return (n) => kernel.twoProducts(o, xa, xp, x.scale, ya, yq, y.scale, n);
      },
    });
    return { buffer: out, scale: 1 };
  });
}

/** Derivatives of v = x / y, by way of 1 / y. */
export function quotientSlopes(above: Sloped, below: Sloped, v: number, w: Writer): Slopes {
  const [a, b] = [above.slopes, below.slopes];
  if (a.size === 0 && b.size === 0) return NO_SLOPES;
  const r = w.fresh();
  w.emit({
    reads: [below.buffer],
    writes: [r],
    link: (at) => {
      const [out, x] = [at(r), at(below.buffer)];
      return (n) => kernel.reciprocal(out, x, n);
    },
  });
  return merge(a, b, (x, y) => {
    if (!y) return timesBuffer(x as Slope, r, w);
    const out = w.fresh();
    const upper = x ?? { buffer: ZEROS, scale: 0 };
    w.emit({
      reads: [upper.buffer, y.buffer, v, r],
      writes: [out],
      link: (at) => {
        const [o, xa, xv, yb, xr] = [at(out), at(upper.buffer), at(v), at(y.buffer), at(r)];
        return (n) => kernel.quotientSlope(o, xa, upper.scale, xv, yb, y.scale, xr, n);
      },
    });
    return { buffer: out, scale: 1 };
  });
}

type BranchKernel = (
  out: Float64Array,
  by: Float64Array,
  a: Float64Array,
  s: number,
  b: Float64Array,
  t: number,
  n: number,
) => void;

/** Derivatives of a choice: those of the branch that was taken, row by row. */
export function branchSlopes(a: Slopes, b: Slopes, by: number, run: BranchKernel, w: Writer): Slopes {
  return merge(a, b, (x, y) => {
    const yes = x ?? { buffer: ZEROS, scale: 0 };
    const no = y ?? { buffer: ZEROS, scale: 0 };
    const out = w.fresh();
    w.emit({
      reads: [by, yes.buffer, no.buffer],
      writes: [out],
      link: (at) => {
        const [o, c, p, q] = [at(out), at(by), at(yes.buffer), at(no.buffer)];
        return (n) => run(o, c, p, yes.scale, q, no.scale, n);
      },
    });
    return { buffer: out, scale: 1 };
  });
}
