import * as message from '../messages/formula.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { Unit } from '../quantities/unit.ts';
import {
  differenceUnit,
  divideUnits,
  isPure,
  multiplyUnits,
  ONE,
  raiseUnit,
  sameDimension,
} from '../quantities/unit-algebra.ts';
import type { Builder, Value } from './builder.ts';
import type { BinaryOperator, Expression, Span } from './expression.ts';
import { FormulaFault } from './formula-fault.ts';
import { POWER, REMAINDER, SQRT } from './numeric-functions.ts';
import type { Comparison } from './step.ts';
import { describeType, numberIn, shownUnit, type ValueType } from './value-type.ts';

type Binary = Extract<Expression, { kind: 'binary' }>;
type NumberValue = Value & { readonly type: Extract<ValueType, { kind: 'number' }> };
/** Of a quantity with a unit; beyond it no unit is one that anybody uses. */
const HIGHEST_POWER = 12;
const DAY = findUnit('d') as Unit;

/** Builds one operator over two parts that are already built. @throws FormulaFault that points at the operator. */
export function buildBinary(node: Binary, left: Value, right: Value, builder: Builder): Value {
  const { operator } = node;
  if (operator === '&&' || operator === '||') {
    const args = [logic(left, operator, builder), logic(right, operator, builder)] as const;
    return {
      step: builder.steps.put({ op: operator === '&&' ? 'and' : 'or', args }),
      type: { kind: 'logic' },
      span: node,
    };
  }
  if (isComparison(operator)) return compare(node, operator, left, right, builder);
  if (left.type.kind === 'date' || right.type.kind === 'date') return withDate(node, left, right, builder);
  const [a, b] = [number(left, operator, builder), number(right, operator, builder)];
  if (operator === '+' || operator === '-') return addition(node, operator, a, b, builder);
  return multiplication(node, operator, a, b, builder);
}

const isComparison = (operator: BinaryOperator): operator is Comparison =>
  ['<', '<=', '>', '>=', '==', '!='].includes(operator);

function number(value: Value, operator: string, builder: Builder): NumberValue {
  if (value.type.kind !== 'number')
    throw new FormulaFault(
      message.notANumber(operator, builder.quote(value.span), describeType(value.type)),
      value.span,
    );
  return value as NumberValue;
}

function logic(value: Value, operator: string, builder: Builder): number {
  if (value.type.kind !== 'logic')
    throw new FormulaFault(message.notLogic(operator, builder.quote(value.span), describeType(value.type)), value.span);
  return value.step;
}

/** Brings two numbers to one unit: a bare one takes the other's, else the right one is converted to the left one's. */
function align(
  at: Span,
  operator: string,
  left: NumberValue,
  right: NumberValue,
  builder: Builder,
): { a: number; b: number; unit: Unit; bare: boolean } {
  const [u, v] = [left.type.unit, right.type.unit];
  if (left.type.bare !== right.type.bare) {
    const other = left.type.bare ? v : u;
    return { a: left.step, b: right.step, unit: other, bare: false };
  }
  if (!sameDimension(u, v))
    throw new FormulaFault(
      message.unitsDiffer(operator, builder.quote(left.span), shownUnit(u), builder.quote(right.span), shownUnit(v)),
      at,
    );
  const b = builder.steps.affine(right.step, v.factor / u.factor, (v.offset - (u.point ? u.offset : 0)) / u.factor);
  return { a: left.step, b, unit: u, bare: left.type.bare };
}

function addition(node: Binary, operator: '+' | '-', left: NumberValue, right: NumberValue, builder: Builder): Value {
  const { steps } = builder;
  const [u, v] = [left.type.unit, right.type.unit];
  if ((u.point && right.type.bare) || (v.point && left.type.bare)) {
    const [bare, other] = right.type.bare ? [right, left] : [left, right];
    throw new FormulaFault(
      message.bareWithPoint(operator, builder.quote(bare.span), builder.quote(other.span)),
      node.at,
    );
  }
  if (!sameDimension(u, v)) align(node.at, operator, left, right, builder);
  const sign = operator === '+' ? 1 : -1;
  if (u.point && v.point) {
    if (operator === '+')
      throw new FormulaFault(message.pointsAdded('+', builder.quote(left.span), builder.quote(right.span)), node.at);
    const { a, b } = align(node.at, operator, left, right, builder);
    return { step: steps.subtract(a, b), type: numberIn(differenceUnit(u)), span: node };
  }
  if (u.point || v.point) {
    // A point plus or minus a difference; a difference minus a point means nothing.
    if (v.point && operator === '-')
      throw new FormulaFault(message.pointScaled('-', builder.quote(right.span)), node.at);
    const [point, difference] = u.point ? [left, right] : [right, left];
    const step = steps.affine(difference.step, (sign * difference.type.unit.factor) / point.type.unit.factor);
    return { step: steps.add(point.step, step), type: numberIn(point.type.unit), span: node };
  }
  const { a, b, unit, bare } = align(node.at, operator, left, right, builder);
  const step = operator === '+' ? steps.add(a, b) : steps.subtract(a, b);
  return { step, type: { kind: 'number', unit, bare }, span: node };
}

function multiplication(
  node: Binary,
  operator: BinaryOperator,
  left: NumberValue,
  right: NumberValue,
  builder: Builder,
): Value {
  const { steps } = builder;
  for (const side of [left, right])
    if (side.type.unit.point) throw new FormulaFault(message.pointScaled(operator, builder.quote(side.span)), node.at);
  const [u, v] = [left.type.unit, right.type.unit];
  const bare = left.type.bare && right.type.bare;
  const typed = (unit: Unit): ValueType => ({ kind: 'number', unit, bare });
  if (operator === '*')
    return { step: steps.multiply(left.step, right.step), type: typed(multiplyUnits(u, v)), span: node };
  if (operator === '/')
    return { step: steps.divide(left.step, right.step), type: typed(divideUnits(u, v)), span: node };
  if (operator === '%') {
    const { a, b, unit } = align(node.at, '%', left, right, builder);
    return { step: steps.apply(REMAINDER, [a, b]), type: typed(unit), span: node };
  }
  return power(node, left, right, builder);
}

function power(node: Binary, left: NumberValue, right: NumberValue, builder: Builder): Value {
  const { steps } = builder;
  const exponent = steps.valueOf(right.step);
  const unit = left.type.unit;
  if (exponent === undefined || !isPure(right.type.unit)) {
    if (!isPure(unit))
      throw new FormulaFault(message.powerNeedsNumber(builder.quote(left.span), shownUnit(unit)), node.at);
    const [a, b] = [builder.inUnit(left, ONE, '**'), builder.inUnit(right, ONE, '**')];
    return { step: steps.apply(POWER, [a, b]), type: numberIn(ONE), span: node };
  }
  if (!Number.isInteger(exponent) || Math.abs(exponent) > HIGHEST_POWER) {
    if (!isPure(unit))
      throw new FormulaFault(message.powerNotWhole(builder.quote(left.span), shownUnit(unit), exponent), node.at);
    const base = builder.inUnit(left, ONE, '**');
    const step = exponent === 0.5 ? steps.apply(SQRT, [base]) : steps.apply(POWER, [base, right.step]);
    return { step, type: { kind: 'number', unit: ONE, bare: left.type.bare }, span: node };
  }
  const type: ValueType = { kind: 'number', unit: raiseUnit(unit, exponent), bare: left.type.bare };
  if (exponent === 2) return { step: steps.multiply(left.step, left.step), type, span: node };
  return { step: steps.apply(POWER, [left.step, right.step]), type, span: node };
}

function compare(node: Binary, operator: Comparison, left: Value, right: Value, builder: Builder): Value {
  const { steps } = builder;
  const logicType = { step: 0, type: { kind: 'logic' } as const, span: node };
  if (left.type.kind === 'text' || right.type.kind === 'text') {
    const column = left.column ?? right.column;
    const text = left.literal ?? right.literal;
    if (column === undefined || text === undefined || (operator !== '==' && operator !== '!='))
      throw incomparable(node, left, right, builder);
    const step = steps.put({ op: 'text-is', args: [], name: column, text });
    return { ...logicType, step: operator === '==' ? step : steps.put({ op: 'not', args: [step] }) };
  }
  if (left.type.kind !== right.type.kind) throw incomparable(node, left, right, builder);
  if (left.type.kind === 'number') {
    const { a, b } = align(node.at, operator, left as NumberValue, right as NumberValue, builder);
    return { ...logicType, step: steps.put({ op: 'compare', args: [a, b], operator }) };
  }
  return { ...logicType, step: steps.put({ op: 'compare', args: [left.step, right.step], operator }) };
}

const incomparable = (node: Binary, left: Value, right: Value, builder: Builder): FormulaFault =>
  new FormulaFault(message.notComparable(node.operator, builder.quote(left.span), builder.quote(right.span)), node.at);

/** date - date is a time; date plus or minus a time is a date. */
function withDate(node: Binary, left: Value, right: Value, builder: Builder): Value {
  const { operator } = node;
  const { steps } = builder;
  if (left.type.kind === 'date' && right.type.kind === 'date' && operator === '-')
    return { step: steps.subtract(left.step, right.step), type: numberIn(DAY), span: node };
  if (left.type.kind === 'date' && right.type.kind === 'number' && (operator === '+' || operator === '-')) {
    const days = builder.inUnit(right, DAY, operator);
    return {
      step: steps.add(left.step, steps.affine(days, operator === '+' ? 1 : -1)),
      type: { kind: 'date' },
      span: node,
    };
  }
  const other = left.type.kind === 'date' ? left : right;
  throw new FormulaFault(message.notANumber(operator, builder.quote(other.span), 'a date'), node.at);
}
