import { BLOCK_ROWS } from './block-rows.ts';
import type { GroupColumn } from './group-statistics.ts';
import type { BlockContext, Slope } from './instruction.ts';
import { linkPlan } from './link-plan.ts';
import { Plan } from './plan.ts';
import type { Planned } from './planned.ts';
import type { Program } from './program.ts';
import { resolveGroups } from './resolve-groups.ts';
import type { OutputColumn, Sources } from './sources.ts';
import { specialize } from './specialize.ts';

const NONE: ReadonlySet<string> = new Set();

/**
 * Evaluates a program over ranges of rows, a block at a time, in a fixed set of buffers.
 * Each output column gets its values (NaN where unknown, never infinite), its standard uncertainty where it has a
 * column for it, and its bound marks. Where a bound comes through a formula that is not monotone in it, the result is
 * unknown.
 */
export class Evaluator {
  readonly #context: BlockContext = { from: 0 };
  readonly #passes: readonly ((n: number) => void)[];

  constructor(program: Program, sources: Sources, outputs: ReadonlyMap<string, OutputColumn>, withUncertainty = true) {
    const ready = resolveGroups(specialize(program, sources.absent ?? NONE), sources, evaluateWhole);
    const plan = new Plan(ready.program, ready.sources, this.#context, withUncertainty);
    for (const [name, column] of outputs) {
      const output = ready.program.outputs.get(name);
      if (output) writeOutput(plan, plan.planned.get(output.step) as Planned, column, ready.sources, this.#context);
    }
    this.#passes = linkPlan(plan);
  }

  run(from: number, to: number): void {
    for (let start = from; start < to; start += BLOCK_ROWS) {
      const n = Math.min(BLOCK_ROWS, to - start);
      this.#context.from = start;
      for (const pass of this.#passes) pass(n);
    }
  }
}

/** One column over all rows, for what a group function reads. */
export function evaluateWhole(program: Program, sources: Sources, name: string): GroupColumn {
  const { rows } = sources;
  const column = { values: new Float64Array(rows), sd: new Float64Array(rows), bounds: new Int8Array(rows) };
  new Evaluator(program, sources, new Map([[name, column]])).run(0, rows);
  return column;
}

function writeOutput(
  plan: Plan,
  { buffer, slopes, reach }: Planned,
  column: OutputColumn,
  sources: Sources,
  context: BlockContext,
): void {
  const variance = column.sd ? plan.variance(slopes) : buffer;
  const bounded = [...slopes].flatMap(([input, slope]) => {
    const { name } = plan.uncertain[input];
    const marks = sources.bounds.get(name);
    return marks ? [{ marks, slope, monotone: (reach.get(name) ?? 'none') !== 'none' }] : [];
  });
  plan.emit({
    reads: [buffer, variance, ...bounded.map(({ slope }) => slope.buffer)],
    writes: [],
    link: (at) => {
      const [from, spread] = [at(buffer), at(variance)];
      const marks = bounded.map((bound) => ({ ...bound, slopes: at(bound.slope.buffer) }));
      return (n) => {
        const start = column.window ? 0 : context.from;
        copyValues(column, from, spread, start, n);
        for (const bound of marks) carryBound(column, start, bound, context.from, n);
      };
    },
  });
}

function copyValues(
  { values, sd }: OutputColumn,
  from: Float64Array,
  variance: Float64Array,
  start: number,
  n: number,
): void {
  for (let i = 0; i < n; i++) {
    const value = from[i];
    // x - x is 0 for every finite number and NaN for the others.
    values[start + i] = value - value === 0 ? value : Number.NaN;
  }
  if (!sd) return;
  for (let i = 0; i < n; i++) {
    const spread = Math.sqrt(variance[i]);
    const value = from[i];
    sd[start + i] = spread - spread + (value - value) === 0 ? spread : Number.NaN;
  }
}

interface Carried {
  readonly marks: Int8Array;
  readonly slopes: Float64Array;
  readonly slope: Slope;
  readonly monotone: boolean;
}

/** `start` is where the block begins in the output, `from` where it begins in the input. */
function carryBound(column: OutputColumn, start: number, carried: Carried, from: number, n: number): void {
  const { marks, slopes, slope, monotone } = carried;
  for (let i = 0; i < n; i++) {
    const mark = marks[from + i];
    if (mark === 0) continue;
    const steepness = slopes[i] * slope.scale;
    // Another branch was taken in this row, so the bound has no part in it.
    const row = start + i;
    if (steepness === 0 || Number.isNaN(column.values[row])) continue;
    const bound = Math.sign(steepness) * mark;
    const earlier = column.bounds?.[row] ?? 0;
    if (column.bounds && monotone && (earlier === 0 || earlier === bound)) column.bounds[row] = bound;
    else {
      column.values[row] = Number.NaN;
      if (column.sd) column.sd[row] = Number.NaN;
      if (column.bounds) column.bounds[row] = 0;
    }
  }
}
