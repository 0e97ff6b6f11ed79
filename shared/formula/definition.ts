/**
 * A derived quantity: what it is called, what it is measured in, the formula that gives it, and who says so. Built-in
 * relations and the user's own columns are both definitions.
 */
export interface Definition {
  readonly name: string;
  /** As it stands in printed formulas: "O2", "eta_gross". */
  readonly symbol: string;
  readonly title: string;
  /** UCUM code; '' where the formula decides. */
  readonly unit: string;
  readonly formula: string;
  /** Key of a bibliography entry; '' for the user's own. */
  readonly source: string;
  /** Where it holds, in words. */
  readonly validity: string;
}

/** A number that formulas may name. */
export interface NamedConstant {
  readonly value: number;
  readonly unit: string;
  readonly symbol: string;
  readonly title: string;
}

/** A column of input: a number in a unit, text, a date. */
export type InputType =
  | { readonly kind: 'number'; readonly unit: string; readonly symbol: string; readonly title: string }
  | { readonly kind: 'text'; readonly symbol?: string; readonly title?: string }
  | { readonly kind: 'date' };

/** Everything that a formula can name. */
export interface Scope {
  readonly inputs: ReadonlyMap<string, InputType>;
  readonly constants: ReadonlyMap<string, NamedConstant>;
  readonly definitions: ReadonlyMap<string, Definition>;
  /** Short names of inputs: "flue_C" for "reading.flue_C". A definition or constant of that name comes first. */
  readonly aliases: ReadonlyMap<string, string>;
}
