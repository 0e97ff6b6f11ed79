import type { Span } from './expression.ts';

/** What is wrong with a formula and where. Thrown inside this room and caught at its door, where it becomes an Outcome. */
export class FormulaFault extends Error {
  constructor(
    /** What is wrong, what was found and what to do, as the end of a sentence. */
    readonly problem: string,
    readonly span: Span,
  ) {
    super(problem);
  }
}
