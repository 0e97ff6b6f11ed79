import type { BlockContext } from './instruction.ts';
import { linkPlan } from './link-plan.ts';
import { Plan } from './plan.ts';
import type { Planned } from './planned.ts';
import type { Program } from './program.ts';
import type { Sources } from './sources.ts';

/** What one uncertain input has to do with a result. */
export interface BudgetTerm {
  /** The input's name. */
  readonly input: string;
  readonly value: number;
  /** Its standard uncertainty. */
  readonly sd: number;
  /** Partial derivative of the result with respect to it. */
  readonly slope: number;
  /** slope x sd, with its sign: what it contributes, in the result's unit. */
  readonly contribution: number;
}

/**
 * The uncertainty budget of one output at one row, greatest contribution first; inputs without a part in this row are
 * left out. The root of the sum of squares is the result's standard uncertainty (JCGM 100, 5.1.2). The program must
 * hold no value per group.
 */
export function budgetAt(program: Program, sources: Sources, name: string, row: number): readonly BudgetTerm[] {
  const output = program.outputs.get(name);
  if (!output) return [];
  const context: BlockContext = { from: row };
  const plan = new Plan({ ...program, outputs: new Map([[name, output]]) }, sources, context, true);
  const { slopes } = plan.planned.get(output.step) as Planned;
  const terms: BudgetTerm[] = [];
  const value = new Float64Array(1);
  plan.emit({
    reads: [...slopes].flatMap(([input, slope]) => [slope.buffer, plan.uncertain[input].buffer]),
    writes: [],
    link: (at) => () => {
      for (const [input, { buffer, scale }] of slopes) {
        const { name: key, buffer: spread } = plan.uncertain[input];
        const [slope, sd] = [at(buffer)[0] * scale, at(spread)[0]];
        sources.numbers.get(key)?.(row, 1, value);
        if (slope !== 0 && sd !== 0) terms.push({ input: key, value: value[0], sd, slope, contribution: slope * sd });
      }
    },
  });
  // `at` names buffers by their last holder, so the pass that reads must come last; it does.
  for (const pass of linkPlan(plan)) pass(1);
  return terms.sort((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution));
}
