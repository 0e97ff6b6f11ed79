import type { Unit } from '../quantities/unit.ts';
import type { Scope } from './definition.ts';
import type { Expression, Span } from './expression.ts';
import type { StepList } from './step-list.ts';
import type { ValueType } from './value-type.ts';

/** A part of a formula once it is understood: the step that yields it, and what it is. */
export interface Value {
  /** -1 for text, which is only ever compared or handed to a function. */
  readonly step: number;
  readonly type: ValueType;
  readonly span: Span;
  /** Text in quotes. */
  readonly literal?: string;
  /** A column of text, by name. */
  readonly column?: string;
}

/** What the functions of the language may use to build themselves. */
export interface Builder {
  readonly steps: StepList;
  readonly scope: Scope;
  build(part: Expression): Value;
  /** The part's own words. */
  quote(span: Span): string;
  /** The step of the value in the unit. @throws FormulaFault where it measures something else; `who` begins the sentence. */
  inUnit(value: Value, unit: Unit, who: string): number;
  /** The unit of a number. @throws FormulaFault for anything else. */
  unitOf(value: Value, who: string): Unit;
}

/** A function of the language. */
export interface FormulaFunction {
  readonly name: string;
  /** How it is written: "otherwise(x, y)". */
  readonly usage: string;
  readonly title: string;
  readonly build: (call: Extract<Expression, { kind: 'call' }>, builder: Builder) => Value;
}
