import { formulaFault } from '../messages/formula.ts';
import type { FormulaFault } from './formula-fault.ts';

/** Longest stretch of a formula's line that is quoted, so that a long one stays readable. */
const QUOTED = 100;

/** The sentence, then the formula's line with a caret under the place. */
export function describeFault(name: string, formula: string, { problem, span }: FormulaFault): string {
  const before = formula.slice(0, span.from);
  const line = before.split('\n').length;
  const start = before.lastIndexOf('\n') + 1;
  const end = formula.indexOf('\n', span.from);
  const text = formula.slice(start, end === -1 ? undefined : end);
  const column = span.from - start;
  const shift = Math.max(0, Math.min(column - QUOTED / 2, text.length - QUOTED));
  const marks = Math.max(1, Math.min(span.to, start + text.length) - span.from);
  const quoted = text.slice(shift, shift + QUOTED);
  const caret = `${' '.repeat(column - shift)}${'^'.repeat(Math.min(marks, QUOTED))}`;
  return formulaFault(name, line, column + 1, problem, quoted, caret);
}
