import type { TextColumn } from '../table/table.ts';
import { type GroupColumn, groupCodes, groupStatistic } from './group-statistics.ts';
import { liveSteps } from './live-steps.ts';
import type { Program } from './program.ts';
import { type BlockSource, fromColumn, type Sources } from './sources.ts';
import type { Step } from './step.ts';

/** Evaluates one output over all rows. */
export type EvaluateWhole = (program: Program, sources: Sources, name: string) => GroupColumn;

/**
 * Works out the values per group, which need whole columns, in the order in which they stand, and puts each in as an
 * input. What comes back has no group steps left.
 */
export function resolveGroups(
  program: Program,
  sources: Sources,
  evaluate: EvaluateWhole,
): { readonly program: Program; readonly sources: Sources } {
  if (!program.steps.some(({ op }) => op === 'group')) return { program, sources };
  const steps: Step[] = [...program.steps];
  const numbers = new Map<string, BlockSource>(sources.numbers);
  const uncertainties = new Map<string, BlockSource>(sources.uncertainties);
  const bounds = new Map<string, Int8Array>(sources.bounds);
  const now: Sources = { ...sources, numbers, uncertainties, bounds };
  const wanted = liveSteps(program);
  steps.forEach((step, index) => {
    if (step.op !== 'group' || !wanted.has(index)) return;
    const name = `group ${index}`;
    const unit = [...program.outputs.values()][0].unit;
    const whole = (of: number): GroupColumn =>
      evaluate({ steps, outputs: new Map([[name, { step: of, unit }]]) }, now, name);
    let next = 1;
    const keys = step.by.map((key) =>
      key === '' ? codesOf(whole(step.args[next++]).values) : (sources.texts.get(key) as TextColumn),
    );
    const column = groupStatistic(step.statistic, whole(step.args[0]), groupCodes(keys, sources.rows));
    numbers.set(name, fromColumn(column.values));
    uncertainties.set(name, fromColumn(column.sd));
    if (column.bounds.some((mark) => mark !== 0)) bounds.set(name, column.bounds);
    steps[index] = { op: 'input', args: [], name };
  });
  return { program: { ...program, steps }, sources: now };
}

/** Numbers as keys: equal ones share a code, unknown ones have none. */
function codesOf(values: Float64Array): TextColumn {
  const known = new Map<number, number>();
  const codes = Int32Array.from(values, (value) => {
    if (Number.isNaN(value)) return -1;
    const code = known.get(value) ?? known.size;
    known.set(value, code);
    return code;
  });
  return { kind: 'text', codes, levels: Array.from(known.keys(), String) };
}
