import * as message from '../messages/formula.ts';
import { nearestName } from '../names/nearest-name.ts';
import { readIsoDate } from '../quantities/dates.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { Unit } from '../quantities/unit.ts';
import { isPure, ONE, raiseUnit } from '../quantities/unit-algebra.ts';
import { UNIT_NAMES } from '../quantities/unit-table.ts';
import type { Builder, FormulaFunction, Value } from './builder.ts';
import type { Expression } from './expression.ts';
import { FormulaFault } from './formula-fault.ts';
import { buildGroup } from './group-functions.ts';
import { ABS, CEIL, EXP, FLOOR, LN, LOG10, MAX, MIN, ofOne, ROUND, SQRT, WITHIN } from './numeric-functions.ts';
import type { NumericFunction } from './step.ts';
import { describeType, numberIn } from './value-type.ts';

type Call = Extract<Expression, { kind: 'call' }>;

function take(call: Call, count: number, wanted: string): readonly Expression[] {
  if (call.arguments.length !== count)
    throw new FormulaFault(message.wrongCount(call.name, wanted, call.arguments.length), call);
  return call.arguments;
}

/** Functions of a plain number: the argument is brought to unit 1, so that exp(50 %) is exp(0.5). */
const pure = (fn: NumericFunction, title: string): FormulaFunction => ({
  name: fn.key,
  usage: `${fn.key}(x)`,
  title,
  build(call, builder) {
    const [part] = take(call, 1, 'one number');
    const x = builder.inUnit(builder.build(part), ONE, call.name);
    return { step: builder.steps.apply(fn, [x]), type: numberIn(ONE), span: call };
  },
});

/** Functions that leave the unit as it is. */
const keeping = (fn: NumericFunction, title: string): FormulaFunction => ({
  name: fn.key,
  usage: `${fn.key}(x)`,
  title,
  build(call, builder) {
    const [part] = take(call, 1, 'one number');
    const value = builder.build(part);
    builder.unitOf(value, call.name);
    return { ...value, step: builder.steps.apply(fn, [value.step]), span: call };
  },
});

/** Two or more numbers, in the unit of the first that has one. */
const extreme = (fn: NumericFunction, title: string): FormulaFunction => ({
  name: fn.key,
  usage: `${fn.key}(x, y, ...)`,
  title,
  build(call, builder) {
    if (call.arguments.length < 2)
      throw new FormulaFault(message.wrongCount(call.name, 'two numbers or more', call.arguments.length), call);
    const values = call.arguments.map((part) => builder.build(part));
    // Columns of text after the first value ask for the extreme of a group: max(co_ppm, unit).
    if (values.slice(1).every(({ column }) => column !== undefined))
      return buildGroup(call, fn === MIN ? 'minimum' : 'maximum', builder);
    const steps = together(values, call.name, builder);
    const step = steps.steps.reduce((a, b) => builder.steps.apply(fn, [a, b]));
    return { step, type: steps.type, span: call };
  },
});

/** Brings values to the type of the first that is not a bare number. */
function together(
  values: readonly Value[],
  name: string,
  builder: Builder,
): { steps: readonly number[]; type: Value['type'] } {
  const typed = values.find(({ type }) => type.kind !== 'number' || !type.bare) ?? values[0];
  const { type } = typed;
  if (type.kind === 'number') {
    const steps = values.map((value) =>
      value.type.kind === 'number' && value.type.bare ? value.step : builder.inUnit(value, type.unit, name),
    );
    return { steps, type };
  }
  const other = values.find((value) => value.type.kind !== type.kind || value.step < 0);
  if (other)
    throw new FormulaFault(
      other.type.kind === type.kind
        ? message.notANumber(name, builder.quote(other.span), describeType(other.type))
        : message.mixedKinds(
            name,
            builder.quote(typed.span),
            describeType(type),
            builder.quote(other.span),
            describeType(other.type),
          ),
      other.span,
    );
  return { steps: values.map(({ step }) => step), type };
}

const dateFunction = (key: 'year' | 'month', title: string): FormulaFunction => {
  const part = (days: number): number => {
    if (!Number.isFinite(days)) return Number.NaN;
    const date = new Date(Math.floor(days) * 86_400_000);
    return key === 'year' ? date.getUTCFullYear() : date.getUTCMonth() + 1;
  };
  const fn = ofOne(key, key === 'year', part, () => 0);
  return {
    name: key,
    usage: `${key}(d)`,
    title,
    build(call, builder) {
      const value = builder.build(take(call, 1, 'one date')[0]);
      if (value.type.kind !== 'date')
        throw new FormulaFault(
          message.wrongUnit(key, builder.quote(value.span), describeType(value.type), 'a date'),
          call,
        );
      return { step: builder.steps.apply(fn, [value.step]), type: numberIn(ONE), span: call };
    },
  };
};

function unitNamed(part: Expression | undefined, call: Call): Unit {
  if (part?.kind !== 'text')
    throw new FormulaFault(message.needsText(call.name, 'a unit, such as "kPa",'), part ?? call);
  const unit = findUnit(part.value);
  if (!unit) throw new FormulaFault(message.unknownUnit(part.value, nearestName(part.value, UNIT_NAMES.keys())), part);
  return unit;
}

export const PLAIN_FUNCTIONS: readonly FormulaFunction[] = [
  pure(EXP, 'e to the power of x'),
  pure(LN, 'Natural logarithm'),
  pure(LOG10, 'Decimal logarithm'),
  keeping(ABS, 'Magnitude'),
  keeping(ROUND, 'Nearest whole number'),
  keeping(FLOOR, 'Whole number below'),
  keeping(CEIL, 'Whole number above'),
  extreme(MIN, 'The least of several'),
  extreme(MAX, 'The greatest of several'),
  {
    name: 'sqrt',
    usage: 'sqrt(x)',
    title: 'Square root',
    build(call, builder) {
      const value = builder.build(take(call, 1, 'one number')[0]);
      const of = builder.unitOf(value, 'sqrt');
      if (of.point) throw new FormulaFault(message.pointScaled('sqrt', builder.quote(value.span)), call);
      if (isPure(of))
        return {
          step: builder.steps.apply(SQRT, [builder.inUnit(value, ONE, 'sqrt')]),
          type: { ...value.type, unit: ONE } as Value['type'],
          span: call,
        };
      // A root may pass through a unit of half powers on the way to one that people use: a flow goes with sqrt(pressure).
      return { step: builder.steps.apply(SQRT, [value.step]), type: numberIn(raiseUnit(of, 0.5)), span: call };
    },
  },
  {
    name: 'within',
    usage: 'within(x, lowest, highest)',
    title: 'x where it lies between two fixed limits or on one, else unknown; a bound such as ">4000" stays one',
    build(call, builder) {
      const [part, ...limits] = take(call, 3, 'a value and two fixed limits');
      const value = builder.build(part);
      const unit = builder.unitOf(value, call.name);
      const fixed = limits.map((limit) => {
        const given = builder.build(limit);
        const bare = given.type.kind === 'number' && given.type.bare;
        const step = bare ? given.step : builder.inUnit(given, unit, call.name);
        if (builder.steps.valueOf(step) === undefined)
          throw new FormulaFault(message.notFixed(call.name, builder.quote(limit)), limit);
        return step;
      });
      return { ...value, step: builder.steps.apply(WITHIN, [value.step, ...fixed]), span: call };
    },
  },
  {
    name: 'known',
    usage: 'known(x)',
    title: 'Whether x is known',
    build(call, builder) {
      const value = builder.build(take(call, 1, 'one value')[0]);
      const of =
        value.column === undefined
          ? value.step
          : builder.steps.put({ op: 'text-is', args: [], name: value.column, text: '' });
      return { step: builder.steps.put({ op: 'known', args: [of] }), type: { kind: 'logic' }, span: call };
    },
  },
  {
    name: 'otherwise',
    usage: 'otherwise(x, y)',
    title: 'x where it is known, else y',
    build(call, builder) {
      take(call, 2, 'two values');
      const { steps, type } = together(
        call.arguments.map((part) => builder.build(part)),
        call.name,
        builder,
      );
      return { step: builder.steps.put({ op: 'otherwise', args: [steps[0], steps[1]] }), type, span: call };
    },
  },
  {
    name: 'weighted',
    usage: 'weighted(x, y)',
    title: 'Two findings of one quantity, each weighted by the inverse of its variance; the other where one is unknown',
    build(call, builder) {
      take(call, 2, 'two values');
      const { steps, type } = together(
        call.arguments.map((part) => builder.build(part)),
        call.name,
        builder,
      );
      return { step: builder.steps.put({ op: 'weigh', args: [steps[0], steps[1]] }), type, span: call };
    },
  },
  {
    name: 'quantity',
    usage: 'quantity(20, "Cel")',
    title: 'A number with a unit',
    build(call, builder) {
      const [number, unit] = take(call, 2, 'a number and a unit');
      const value = builder.build(number);
      if (value.type.kind !== 'number' || !value.type.bare)
        throw new FormulaFault(message.wrongCount(call.name, 'a plain number and a unit', 2), number);
      return { step: value.step, type: numberIn(unitNamed(unit, call)), span: call };
    },
  },
  {
    name: 'as',
    usage: 'as(x, "kPa")',
    title: 'The same quantity in another unit',
    build(call, builder) {
      const [part, unit] = take(call, 2, 'a value and a unit');
      const target = unitNamed(unit, call);
      return { step: builder.inUnit(builder.build(part), target, call.name), type: numberIn(target), span: call };
    },
  },
  {
    name: 'date',
    usage: 'date("2024-01-31")',
    title: 'A day',
    build(call, builder) {
      const [part] = take(call, 1, 'one date in quotes');
      if (part.kind !== 'text')
        throw new FormulaFault(message.needsText(call.name, 'a date such as "2024-01-31"'), part);
      const days = readIsoDate(part.value);
      if (Number.isNaN(days)) throw new FormulaFault(message.badDate(part.value), part);
      return { step: builder.steps.constant(days), type: { kind: 'date' }, span: call };
    },
  },
  {
    name: 'days_between',
    usage: 'days_between(from, to)',
    title: 'Days from one date to another',
    build(call, builder) {
      take(call, 2, 'two dates');
      const [from, to] = call.arguments.map((part) => builder.build(part));
      for (const side of [from, to])
        if (side.type.kind !== 'date')
          throw new FormulaFault(
            message.wrongUnit(call.name, builder.quote(side.span), describeType(side.type), 'two dates'),
            side.span,
          );
      const step = builder.steps.subtract(to.step, from.step);
      return { step, type: numberIn(findUnit('d') as Unit), span: call };
    },
  },
  dateFunction('year', 'Calendar year'),
  dateFunction('month', 'Calendar month, 1 to 12'),
];
