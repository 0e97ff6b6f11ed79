import { unknownName } from '../messages/formula.ts';
import { nearestName } from '../names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { CalledFunction, Working, WorkingInput, WorkingStep } from '../working/working.ts';
import { budgetAt } from './budget.ts';
import { callsIn } from './calls-in.ts';
import { compileFormulas } from './compile-formulas.ts';
import type { Scope } from './definition.ts';
import { Evaluator, evaluateWhole } from './evaluator.ts';
import { FUNCTIONS } from './functions.ts';
import { namesIn } from './names-in.ts';
import { namesUsed } from './names-used.ts';
import { parseFormula } from './parse-formula.ts';
import { resolveGroups } from './resolve-groups.ts';
import { shownDoubt, shownNumber, UNKNOWN } from './shown-number.ts';
import type { OutputColumn, Sources } from './sources.ts';

/**
 * Shows the working of a definition at a row: relations of unknown value are left out unless the result is unknown too.
 * Which readings it comes from is for the caller to say.
 */
export function workingAt(name: string, row: number, scope: Scope, sources: Sources): Outcome<Working> {
  const target = scope.definitions.get(name);
  if (!target) return fail(unknownName(name, nearestName(name, scope.definitions.keys())));
  const chain = chainOf(name, scope);
  const compiled = compileFormulas(chain, scope);
  if (compiled.status !== 'value') return compiled;
  const ready = resolveGroups(compiled.value, sources, evaluateWhole);
  const found = evaluateRow(chain, row, ready);
  const print = (each: string): string => {
    const own = found.get(each);
    return own ? own.shown : (inputOf(each, row, scope, sources)?.shown ?? each);
  };
  const isKnown: IsKnown = (each) => print(each) !== UNKNOWN && each !== UNKNOWN;
  // Of an unknown result one sees everything, and so what is missing.
  const rests = isKnown(name) ? isKnown : undefined;
  const used = usedBy(name, scope, rests);
  const shown = chain.filter((each) => used.has(each) && (each === name || !isKnown(name) || isKnown(each)));
  const read = new Set(shown.flatMap((each) => readsOf(each, scope, rests)));
  // What is unknown has no uncertainty to be parted.
  const budget = isKnown(name) ? budgetAt(ready.program, ready.sources, name, row) : [];
  const variance = budget.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
  return succeed({
    name,
    title: target.title,
    steps: shown.map((each) => stepOf(each, scope, found, print)),
    inputs: [...read].flatMap((each) => {
      const input = scope.definitions.has(each) ? undefined : inputOf(each, row, scope, sources);
      // What nobody read has no part in a number that is known.
      return input && (input.shown !== UNKNOWN || !isKnown(name)) ? [input] : [];
    }),
    budget: budget.map((term) => ({
      ...term,
      title: titleOf(term.input, scope),
      percent: (100 * term.contribution ** 2) / variance,
    })),
    functions: functionsIn(shown.map((each) => scope.definitions.get(each)?.formula ?? '')),
    readings: [],
  });
}

interface FoundValue {
  readonly value: number;
  readonly sd: number;
  readonly unit: string;
  readonly shown: string;
  readonly stated: string;
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
      const [value, bound] = [values[0], bounds[0]];
      const { stated } = shownDoubt(value, sd[0], unit, bound);
      return [each, { value, sd: sd[0], unit, shown: shownNumber(value, unit, bound), stated }];
    }),
  );
}

/** The definitions that a name rests on, each after those that it reads; itself last. */
function chainOf(name: string, scope: Scope): readonly string[] {
  const order: string[] = [];
  const visit = (each: string, path: readonly string[]): void => {
    const definition = scope.definitions.get(each);
    if (!definition || order.includes(each) || path.includes(each)) return;
    for (const read of namesOf(definition.formula)) visit(read, [...path, each]);
    order.push(each);
  };
  visit(name, []);
  return order;
}

/** Names in a formula; none where it cannot be read, which compiling will say better. */
function namesOf(formula: string): readonly string[] {
  try {
    return namesIn(parseFormula(formula)).map(({ name }) => name);
  } catch {
    return [];
  }
}

type IsKnown = (name: string) => boolean;

/** What the formula of a definition reads; what it rests on where it is known which names are. */
function readsOf(name: string, scope: Scope, isKnown: IsKnown | undefined): readonly string[] {
  const formula = scope.definitions.get(name)?.formula ?? '';
  return isKnown && formula !== '' ? namesUsed(parseFormula(formula), isKnown) : namesOf(formula);
}

/** All names that a result rests on, itself among them. */
function usedBy(name: string, scope: Scope, isKnown: IsKnown | undefined): ReadonlySet<string> {
  const used = new Set<string>([name]);
  for (const each of used) for (const read of readsOf(each, scope, isKnown)) used.add(read);
  return used;
}

function stepOf(
  name: string,
  scope: Scope,
  found: ReadonlyMap<string, FoundValue>,
  print: (name: string) => string,
): WorkingStep {
  const definition = scope.definitions.get(name);
  const { value, sd, unit, shown, stated } = found.get(name) as FoundValue;
  const formula = definition?.formula ?? '';
  return {
    name,
    title: definition?.title ?? name,
    symbols: `${definition?.symbol ?? name} = ${substitute(formula, (each) => symbolOf(each, scope))}`,
    numbers: `${definition?.symbol ?? name} = ${substitute(formula, print)}`,
    result: shown,
    stated,
    value,
    sd,
    unit,
    source: definition?.source ?? '',
    validity: definition?.validity ?? '',
  };
}

/** The formula with each name replaced, all else as it was written; only symbols hold a comma without a space behind it. */
function substitute(formula: string, by: (name: string) => string): string {
  let [text, at] = ['', 0];
  const kept = (from: number, to?: number): string => formula.slice(from, to).replace(/,(?=\S|$)/g, ', ');
  for (const { name, from, to } of namesIn(parseFormula(formula))) {
    text += kept(at, from) + by(name);
    at = to;
  }
  return (text + kept(at)).replaceAll(' * ', ' × ').replaceAll(' - ', ' − ');
}

/** The functions that the formulas call, each once, in order of first call. */
function functionsIn(formulas: readonly string[]): readonly CalledFunction[] {
  const names = new Set(formulas.flatMap((formula) => (formula === '' ? [] : callsIn(parseFormula(formula)))));
  return [...names].flatMap((name) => {
    const called = FUNCTIONS.get(name);
    return called ? [{ usage: called.usage, title: called.title }] : [];
  });
}

function symbolOf(name: string, scope: Scope): string {
  const key = scope.aliases.get(name) ?? name;
  const input = scope.inputs.get(key);
  return (
    scope.definitions.get(name)?.symbol ??
    scope.constants.get(name)?.symbol ??
    (input?.kind === 'date' ? name : (input?.symbol ?? name))
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
    const shown = shownNumber(constant.value, unit);
    return { name, title: constant.title, symbol: constant.symbol, shown, stated: shown, shownSd: '' };
  }
  const key = scope.aliases.get(name) ?? name;
  const input = scope.inputs.get(key);
  if (input?.kind === 'text') {
    const column = sources.texts.get(key);
    const code = column?.codes[row] ?? -1;
    const shown = column && code >= 0 ? `"${column.levels[code]}"` : UNKNOWN;
    return { name, title: input.title ?? name, symbol: input.symbol ?? name, shown, stated: shown, shownSd: '' };
  }
  const source = sources.numbers.get(key);
  if (input?.kind !== 'number' || !source) return undefined;
  const unit = findUnit(input.unit)?.shown ?? input.unit;
  const [value, sd] = [new Float64Array(1), new Float64Array(1)];
  source(row, 1, value);
  sources.uncertainties.get(key)?.(row, 1, sd);
  const bound = sources.bounds.get(key)?.[row] ?? 0;
  const shown = shownNumber(value[0], unit, bound);
  const doubt = shownDoubt(value[0], sd[0], unit, bound);
  return { name, title: input.title, symbol: input.symbol, shown, ...doubt };
}
