import { unknownName } from '../messages/formula.ts';
import { nearestName } from '../names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { type BudgetTerm, budgetAt } from './budget.ts';
import { compileFormulas } from './compile-formulas.ts';
import type { Scope } from './definition.ts';
import { Evaluator, evaluateWhole } from './evaluator.ts';
import { namesIn } from './names-in.ts';
import { parseFormula } from './parse-formula.ts';
import { resolveGroups } from './resolve-groups.ts';
import { shownNumber } from './shown-number.ts';
import type { OutputColumn, Sources } from './sources.ts';

/** One relation of a chain at one reading. */
export interface WorkingStep {
  readonly name: string;
  readonly title: string;
  /** "O2 = ..." with the symbols of what it reads. */
  readonly symbols: string;
  /** The same with numbers and units put in. */
  readonly numbers: string;
  /** The result with its unit; "unknown", or "at least 4000 ppm". */
  readonly result: string;
  readonly value: number;
  readonly sd: number;
  readonly unit: string;
  /** Key of a bibliography entry, '' for the user's own. */
  readonly source: string;
  readonly validity: string;
}

/** An input that the chain begins with: a reading, a property of the fuel, a condition, a constant. */
export interface WorkingInput {
  readonly name: string;
  readonly title: string;
  readonly symbol: string;
  readonly shown: string;
  /** Standard uncertainty with unit, '' where it is taken as exact. */
  readonly shownSd: string;
}

export interface WorkingShare extends BudgetTerm {
  readonly title: string;
  /** Percent of the result's variance. */
  readonly percent: number;
}

/** How one derived number came about, down to the readings. */
export interface Working {
  readonly name: string;
  readonly title: string;
  /** From the readings up; the last is the number asked about. */
  readonly steps: readonly WorkingStep[];
  readonly inputs: readonly WorkingInput[];
  readonly budget: readonly WorkingShare[];
}

/** Shows the working of a definition at a row: relations of unknown value are left out unless the result is unknown too. */
export function workingAt(name: string, row: number, scope: Scope, sources: Sources): Outcome<Working> {
  const target = scope.definitions.get(name);
  if (!target) return fail(unknownName(name, nearestName(name, scope.definitions.keys())));
  const chain = chainOf(name, scope);
  const compiled = compileFormulas(chain, scope);
  if (compiled.status !== 'value') return compiled;
  const ready = resolveGroups(compiled.value, sources, evaluateWhole);
  const found = evaluateRow(chain, row, ready);
  const resultKnown = !Number.isNaN(found.get(name)?.value ?? Number.NaN);
  const shown = chain.filter(
    (each) => each === name || !resultKnown || !Number.isNaN(found.get(each)?.value ?? Number.NaN),
  );
  const read = new Set(shown.flatMap((each) => [...directInputs(each, scope)]));
  const print = (each: string): string => {
    const own = found.get(each);
    return own ? own.shown : (inputOf(each, row, scope, sources)?.shown ?? each);
  };
  const budget = budgetAt(ready.program, ready.sources, name, row);
  const variance = budget.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  return succeed({
    name,
    title: target.title,
    steps: shown.map((each) => stepOf(each, scope, found, print)),
    inputs: [...read].flatMap((each) => inputOf(each, row, scope, sources) ?? []),
    budget: budget.map((term) => ({
      ...term,
      title: titleOf(term.input, scope),
      percent: (100 * term.contribution ** 2) / variance,
    })),
  });
}

interface FoundValue {
  readonly value: number;
  readonly sd: number;
  readonly unit: string;
  readonly shown: string;
}

function evaluateRow(
  chain: readonly string[],
  row: number,
  { program, sources }: ReturnType<typeof resolveGroups>,
): ReadonlyMap<string, FoundValue> {
  const columns = new Map(
    chain.map((each): [string, Required<OutputColumn>] => [
      each,
      { values: new Float64Array(1), sd: new Float64Array(1), bounds: new Int8Array(1), window: true },
    ]),
  );
  new Evaluator(program, sources, columns).run(row, row + 1);
  return new Map(
    [...columns].map(([each, { values, sd, bounds }]) => {
      const unit = program.outputs.get(each)?.unit.shown ?? '';
      return [each, { value: values[0], sd: sd[0], unit, shown: shownNumber(values[0], unit, bounds[0]) }];
    }),
  );
}

/** The definitions that a name rests on, each after those that it reads; itself last. */
function chainOf(name: string, scope: Scope): readonly string[] {
  const order: string[] = [];
  const visit = (each: string, path: readonly string[]): void => {
    const definition = scope.definitions.get(each);
    if (!definition || order.includes(each) || path.includes(each)) return;
    for (const read of readsOf(definition.formula)) visit(read, [...path, each]);
    order.push(each);
  };
  visit(name, []);
  return order;
}

/** Names in a formula; none where it cannot be read, which compiling will say better. */
function readsOf(formula: string): readonly string[] {
  try {
    return namesIn(parseFormula(formula)).map(({ name }) => name);
  } catch {
    return [];
  }
}

const directInputs = (name: string, scope: Scope): readonly string[] =>
  readsOf(scope.definitions.get(name)?.formula ?? '').filter((read) => !scope.definitions.has(read));

function stepOf(
  name: string,
  scope: Scope,
  found: ReadonlyMap<string, FoundValue>,
  print: (name: string) => string,
): WorkingStep {
  const definition = scope.definitions.get(name);
  const { value, sd, unit, shown } = found.get(name) as FoundValue;
  const formula = definition?.formula ?? '';
  return {
    name,
    title: definition?.title ?? name,
    symbols: `${definition?.symbol ?? name} = ${substitute(formula, (each) => symbolOf(each, scope))}`,
    numbers: `${definition?.symbol ?? name} = ${substitute(formula, print)}`,
    result: shown,
    value,
    sd,
    unit,
    source: definition?.source ?? '',
    validity: definition?.validity ?? '',
  };
}

/** The formula with each name replaced, all else as it was written. */
function substitute(formula: string, by: (name: string) => string): string {
  let [text, at] = ['', 0];
  for (const { name, from, to } of namesIn(parseFormula(formula))) {
    text += formula.slice(at, from) + by(name);
    at = to;
  }
  return (text + formula.slice(at)).replaceAll(' * ', ' × ').replaceAll(' - ', ' − ');
}

function symbolOf(name: string, scope: Scope): string {
  const key = scope.aliases.get(name) ?? name;
  const input = scope.inputs.get(key);
  return (
    scope.definitions.get(name)?.symbol ??
    scope.constants.get(name)?.symbol ??
    (input?.kind === 'number' ? input.symbol : name)
  );
}

function titleOf(name: string, scope: Scope): string {
  const input = scope.inputs.get(name);
  return input?.kind === 'number' ? input.title : name;
}

function inputOf(name: string, row: number, scope: Scope, sources: Sources): WorkingInput | undefined {
  const constant = scope.constants.get(name);
  if (constant) {
    const unit = findUnit(constant.unit)?.shown ?? constant.unit;
    return {
      name,
      title: constant.title,
      symbol: constant.symbol,
      shown: shownNumber(constant.value, unit),
      shownSd: '',
    };
  }
  const key = scope.aliases.get(name) ?? name;
  const input = scope.inputs.get(key);
  if (input?.kind === 'text') {
    const column = sources.texts.get(key);
    const code = column?.codes[row] ?? -1;
    const shown = column && code >= 0 ? `"${column.levels[code]}"` : 'unknown';
    return { name, title: name, symbol: name, shown, shownSd: '' };
  }
  const source = sources.numbers.get(key);
  if (input?.kind !== 'number' || !source) return undefined;
  const unit = findUnit(input.unit)?.shown ?? input.unit;
  const [value, sd] = [new Float64Array(1), new Float64Array(1)];
  source(row, 1, value);
  const spread = sources.uncertainties.get(key);
  spread?.(row, 1, sd);
  const shown = shownNumber(value[0], unit, sources.bounds.get(key)?.[row] ?? 0);
  const shownSd = spread && !Number.isNaN(value[0]) ? shownNumber(sd[0], unit === '°C' ? 'K' : unit) : '';
  return { name, title: input.title, symbol: input.symbol, shown, shownSd };
}
