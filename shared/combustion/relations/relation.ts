import type { Definition } from '../../formula/definition.ts';

/** A built-in derivation, written in the same language as the user's own columns. */
export type Relation = Definition;

export function relation(
  name: string,
  symbol: string,
  title: string,
  unit: string,
  formula: string,
  source: string,
  validity: string,
): Relation {
  return { name, symbol, title, unit, formula, source, validity };
}
