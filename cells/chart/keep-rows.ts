import { compileFormulas } from '../../shared/formula/compile-formulas.ts';
import type { Definition, InputType } from '../../shared/formula/definition.ts';
import { Evaluator } from '../../shared/formula/evaluator.ts';
import { type BlockSource, fromColumn } from '../../shared/formula/sources.ts';
import { type Outcome, succeed } from '../../shared/outcome.ts';
import { findUnit } from '../../shared/quantities/find-unit.ts';
import type { Table, TextColumn } from '../../shared/table/table.ts';

/** Rows of the table for which the condition holds; a row for which it is unknown is not kept. */
export function keepRows(table: Table, where: string): Outcome<Uint32Array> {
  if (where.trim() === '') return succeed(Uint32Array.from({ length: table.rows }, (_, row) => row));
  const inputs = new Map<string, InputType>();
  const numbers = new Map<string, BlockSource>();
  const texts = new Map<string, TextColumn>();
  for (const [name, column] of table.columns) {
    if (column.kind === 'text') texts.set(name, column);
    else numbers.set(name, fromColumn(column.values));
    inputs.set(
      name,
      column.kind === 'number'
        ? { kind: 'number', unit: findUnit(column.unit) ? column.unit : '1', symbol: name, title: name }
        : { kind: column.kind },
    );
  }
  const keep: Definition = {
    name: 'where',
    symbol: 'where',
    title: 'where',
    unit: '1',
    formula: `(${where}) ? 1 : 0`,
    source: '',
    validity: '',
  };
  // Compiled on its own as well, so that a fault's place is counted in the user's own text.
  const alone: Definition = { ...keep, name: 'condition', formula: where };
  const scope = { inputs, constants: new Map(), aliases: new Map(), definitions: new Map([['where', keep]]) };
  const parsed = compileFormulas(['condition'], { ...scope, definitions: new Map([['condition', alone]]) });
  const program = compileFormulas(['where'], scope);
  if (program.status !== 'value') return parsed.status === 'error' ? parsed : program;
  const values = new Float64Array(table.rows);
  const sources = { rows: table.rows, numbers, texts, uncertainties: new Map(), bounds: new Map() };
  new Evaluator(program.value, sources, new Map([['where', { values }]]), false).run(0, table.rows);
  return succeed(Uint32Array.from({ length: table.rows }, (_, row) => row).filter((row) => values[row] === 1));
}
