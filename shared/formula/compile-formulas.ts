import * as message from '../messages/formula.ts';
import { nearestName } from '../names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { Unit } from '../quantities/unit.ts';
import { ONE, sameDimension } from '../quantities/unit-algebra.ts';
import type { Builder, Value } from './builder.ts';
import type { Scope } from './definition.ts';
import { describeFault } from './describe-fault.ts';
import type { Expression, Span } from './expression.ts';
import { FormulaFault } from './formula-fault.ts';
import { FUNCTIONS } from './functions.ts';
import { buildBinary } from './operators.ts';
import { parseFormula } from './parse-formula.ts';
import type { Program } from './program.ts';
import { StepList } from './step-list.ts';
import { describeType, numberIn, shownUnit } from './value-type.ts';

/**
 * Turns the definitions that are wanted, and those they read, into one list of steps in which shared parts occur once.
 * The error is one sentence with the formula's line and a caret under the place.
 */
export function compileFormulas(wanted: readonly string[], scope: Scope): Outcome<Program> {
  const compiler = new Compiler(scope);
  try {
    const outputs = new Map(
      wanted.map((name) => {
        const value = compiler.named(name, { from: 0, to: 1 });
        if (value.type.kind !== 'number')
          throw new FormulaFault(message.resultKind(describeType(value.type)), value.span);
        return [name, { step: value.step, unit: value.type.unit }] as const;
      }),
    );
    return succeed({ steps: compiler.steps.steps, outputs });
  } catch (error) {
    if (error instanceof NamedFault) return fail(describeFault(error.name, error.formula, error.fault));
    if (error instanceof FormulaFault) return fail(error.problem);
    throw error;
  }
}

/** A fault with the formula in which it stands. */
class NamedFault extends Error {
  constructor(
    override readonly name: string,
    readonly formula: string,
    readonly fault: FormulaFault,
  ) {
    super(fault.problem);
  }
}

class Compiler implements Builder {
  readonly steps = new StepList();
  readonly #built = new Map<string, Value>();
  readonly #path: string[] = [];
  #text = '';

  constructor(readonly scope: Scope) {}

  quote({ from, to }: Span): string {
    const found = this.#text.slice(from, to).replace(/\s+/g, ' ');
    return found.length > 40 ? `${found.slice(0, 40)} ...` : found;
  }

  unitOf(value: Value, who: string): Unit {
    if (value.type.kind === 'number') return value.type.unit;
    throw new FormulaFault(message.notANumber(who, this.quote(value.span), describeType(value.type)), value.span);
  }

  inUnit(value: Value, unit: Unit, who: string): number {
    const from = this.unitOf(value, who);
    if (value.type.kind === 'number' && value.type.bare && !unit.point && sameDimension(unit, ONE))
      return this.steps.affine(value.step, 1 / unit.factor);
    if (!sameDimension(from, unit) || (unit.point && !from.point))
      throw new FormulaFault(
        message.wrongUnit(who, this.quote(value.span), shownUnit(from), shownUnit(unit)),
        value.span,
      );
    return this.steps.affine(value.step, from.factor / unit.factor, (from.offset - unit.offset) / unit.factor);
  }

  build(part: Expression): Value {
    switch (part.kind) {
      case 'number':
        return {
          step: this.steps.constant(part.value),
          type: { kind: 'number', unit: ONE, bare: true },
          span: part,
        };
      case 'text':
        return { step: -1, type: { kind: 'text' }, span: part, literal: part.value };
      case 'name':
        return { ...this.named(part.name, part), span: part };
      case 'unary':
        return this.#unary(part);
      case 'binary':
        return buildBinary(part, this.build(part.left), this.build(part.right), this);
      case 'choice':
        return this.#choice(part);
      case 'call':
        return this.#call(part);
    }
  }

  #unary(part: Extract<Expression, { kind: 'unary' }>): Value {
    const value = this.build(part.argument);
    if (part.operator === '!') {
      if (value.type.kind !== 'logic')
        throw new FormulaFault(message.notLogic('!', this.quote(value.span), describeType(value.type)), value.span);
      return { step: this.steps.put({ op: 'not', args: [value.step] }), type: value.type, span: part };
    }
    const unit = this.unitOf(value, part.operator);
    if (part.operator === '+') return value;
    if (unit.point) throw new FormulaFault(message.pointScaled('-', this.quote(value.span)), part);
    return { ...value, step: this.steps.affine(value.step, -1), span: part };
  }

  #choice(part: Extract<Expression, { kind: 'choice' }>): Value {
    const test = this.build(part.test);
    if (test.type.kind !== 'logic')
      throw new FormulaFault(message.notLogic('?', this.quote(part.test), describeType(test.type)), part.test);
    const [yes, no] = [this.build(part.yes), this.build(part.no)];
    if (yes.type.kind !== no.type.kind || yes.step < 0 || no.step < 0)
      throw new FormulaFault(message.notComparable('? :', this.quote(part.yes), this.quote(part.no)), part);
    const bare = yes.type.kind === 'number' && yes.type.bare;
    const type = bare ? no.type : yes.type;
    const suited = (value: Value): number =>
      type.kind !== 'number' || (value.type.kind === 'number' && value.type.bare)
        ? value.step
        : this.inUnit(value, type.unit, '? :');
    const args = [test.step, suited(yes), suited(no)] as const;
    return { step: this.steps.put({ op: 'choose', args }), type, span: part };
  }

  #call(part: Extract<Expression, { kind: 'call' }>): Value {
    const fn = FUNCTIONS.get(part.name);
    if (!fn) {
      const names = [...FUNCTIONS.keys()];
      throw new FormulaFault(
        message.unknownFunction(part.name, nearestName(part.name, names), names.join(', ')),
        part.at,
      );
    }
    return fn.build(part, this);
  }

  /** What a name stands for: an input, a constant, or a definition, which is built in its turn. */
  named(name: string, span: Span): Value {
    const known = this.#built.get(name);
    if (known) return known;
    const value =
      this.#unknown(name, span) ??
      this.#input(name, span) ??
      this.#constant(name, span) ??
      this.#definition(name, span) ??
      this.#alias(name, span);
    if (!value) {
      const { inputs, constants, definitions, aliases } = this.scope;
      const names = [...definitions.keys(), ...aliases.keys(), ...inputs.keys(), ...constants.keys()];
      throw new FormulaFault(message.unknownName(name, nearestName(name, names)), span);
    }
    this.#built.set(name, value);
    return value;
  }

  /** "unknown" is a number of whatever unit is wanted beside it. */
  #unknown(name: string, span: Span): Value | undefined {
    if (name !== 'unknown') return undefined;
    return { step: this.steps.constant(Number.NaN), type: { kind: 'number', unit: ONE, bare: true }, span };
  }

  #input(name: string, span: Span): Value | undefined {
    const input = this.scope.inputs.get(name);
    // A definition hides an input of the same name; "reading.o2_pct" still names the column as it was read.
    if (!input || this.scope.definitions.has(name)) return undefined;
    if (input.kind === 'text') return { step: -1, type: { kind: 'text' }, span, column: name };
    const step = this.steps.put({ op: 'input', args: [], name });
    return { step, type: input.kind === 'date' ? { kind: 'date' } : numberIn(unitCalled(input.unit)), span };
  }

  #alias(name: string, span: Span): Value | undefined {
    const full = this.scope.aliases.get(name);
    return full === undefined ? undefined : this.named(full, span);
  }

  #constant(name: string, span: Span): Value | undefined {
    const constant = this.scope.constants.get(name);
    if (!constant) return undefined;
    return { step: this.steps.constant(constant.value), type: numberIn(unitCalled(constant.unit)), span };
  }

  #definition(name: string, span: Span): Value | undefined {
    const definition = this.scope.definitions.get(name);
    if (!definition) return undefined;
    if (this.#path.includes(name)) {
      const circle = [...this.#path.slice(this.#path.indexOf(name)), name].join(' -> ');
      throw new FormulaFault(message.readsItself(circle), span);
    }
    const outer = this.#text;
    this.#path.push(name);
    this.#text = definition.formula;
    try {
      const value = this.build(parseFormula(definition.formula));
      if (definition.unit === '') return value;
      const unit = unitCalled(definition.unit);
      const found = this.unitOf(value, name);
      const bare = value.type.kind === 'number' && value.type.bare;
      if (!bare && (!sameDimension(found, unit) || (unit.point && !found.point)))
        throw new FormulaFault(message.resultUnit(shownUnit(found), shownUnit(unit)), value.span);
      return { step: bare ? value.step : this.inUnit(value, unit, name), type: numberIn(unit), span };
    } catch (fault) {
      if (fault instanceof FormulaFault) throw new NamedFault(name, definition.formula, fault);
      throw fault;
    } finally {
      this.#path.pop();
      this.#text = outer;
    }
  }
}

function unitCalled(code: string): Unit {
  const unit = findUnit(code);
  if (!unit) throw new RangeError(`no unit ${code}`);
  return unit;
}
