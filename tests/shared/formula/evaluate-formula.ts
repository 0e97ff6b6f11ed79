import { compileFormulas } from '../../../shared/formula/compile-formulas.ts';
import type { Definition, InputType, Scope } from '../../../shared/formula/definition.ts';
import { Evaluator } from '../../../shared/formula/evaluator.ts';
import { fromColumn, fromConstant } from '../../../shared/formula/sources.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { textColumn } from '../../../shared/table/columns.ts';

export interface Column {
  /** UCUM code; 'text' and 'date' for those. */
  readonly unit: string;
  readonly values: readonly (number | string)[];
  readonly sd?: number;
  readonly bounds?: readonly number[];
  /** Never below 0. */
  readonly nonNegative?: true;
}

export interface Result {
  readonly unit: string;
  readonly values: readonly number[];
  readonly sd: readonly number[];
  readonly bounds: readonly number[];
}

export function scopeOf(columns: Readonly<Record<string, Column>>, formulas: Readonly<Record<string, string>>): Scope {
  const inputs = new Map(
    Object.entries(columns).map(([name, { unit }]): [string, InputType] => [
      name,
      unit === 'text' || unit === 'date' ? { kind: unit } : { kind: 'number', unit, symbol: name, title: name },
    ]),
  );
  const definitions = new Map(
    Object.entries(formulas).map(([key, formula]): [string, Definition] => {
      const [name, unit = ''] = key.split('|');
      return [name, { name, symbol: name, title: name, unit, formula, source: '', validity: '' }];
    }),
  );
  return { inputs, constants: new Map(), definitions, aliases: new Map() };
}

/** Evaluates the last of the formulas; a key may carry its unit, "drop|Pa". */
export function evaluateFormulas(
  formulas: Readonly<Record<string, string>>,
  columns: Readonly<Record<string, Column>>,
): Outcome<Result> {
  const names = Object.keys(formulas).map((key) => key.split('|')[0]);
  const name = names[names.length - 1];
  const compiled = compileFormulas([name], scopeOf(columns, formulas));
  if (compiled.status !== 'value') return compiled;
  const entries = Object.entries(columns);
  const rows = entries[0]?.[1].values.length ?? 1;
  const numeric = entries.filter(([, { unit }]) => unit !== 'text');
  const output = { values: new Float64Array(rows), sd: new Float64Array(rows), bounds: new Int8Array(rows) };
  new Evaluator(
    compiled.value,
    {
      rows,
      numbers: new Map(
        numeric.map(([key, { values }]) => [key, fromColumn(Float64Array.from(values as readonly number[]))]),
      ),
      texts: new Map(
        entries
          .filter(([, { unit }]) => unit === 'text')
          .map(([key, { values }]) => [key, textColumn(values as readonly string[])]),
      ),
      uncertainties: new Map(
        numeric.flatMap(([key, { sd, bounds }]) => (sd !== undefined || bounds ? [[key, fromConstant(sd ?? 0)]] : [])),
      ),
      nonNegative: new Set(numeric.flatMap(([key, { nonNegative }]) => (nonNegative ? [key] : []))),
      bounds: new Map(numeric.flatMap(([key, { bounds }]) => (bounds ? [[key, Int8Array.from(bounds)]] : []))),
    },
    new Map([[name, output]]),
  ).run(0, rows);
  const { unit } = compiled.value.outputs.get(name) as { unit: { code: string } };
  return {
    status: 'value',
    value: { unit: unit.code, values: [...output.values], sd: [...output.sd], bounds: [...output.bounds] },
  };
}

/** @throws Error with the message where the formula is wrong. */
export function calculate(formula: string, columns: Readonly<Record<string, Column>> = {}, unit = ''): Result {
  const found = evaluateFormulas({ [`own|${unit}`]: formula }, columns);
  if (found.status !== 'value') throw new Error(found.status === 'error' ? found.message : 'a question');
  return found.value;
}

export function faultOf(formula: string, columns: Readonly<Record<string, Column>> = {}, unit = ''): string {
  const found = evaluateFormulas({ [`own|${unit}`]: formula }, columns);
  return found.status === 'error' ? found.message : `no fault: ${JSON.stringify(found)}`;
}
