/** Mole fractions of a gas by component, or mass fractions of a liquid by element. Either sums to 1. */
export type Composition =
  | { readonly kind: 'gas'; readonly moles: Readonly<Record<string, number>> }
  | {
      readonly kind: 'ultimate';
      readonly mass: { readonly [element in 'C' | 'H' | 'O' | 'N' | 'S' | 'water' | 'ash']?: number };
      /** Gross heating value at 25 °C as analyzed, J/kg: it does not follow from the elements alone. */
      readonly grossJperKg: number;
    };

/** A fuel as the notebook knows it: what it is made of and who says so. */
export interface Fuel {
  /** As files write it: natural_gas, no2_oil ... */
  readonly name: string;
  /** As people read it: "natural gas". */
  readonly title: string;
  readonly composition: Composition;
  /** Key into shared/sources/fuels.ts. */
  readonly source: string;
  /** Standard uncertainty of its CO2max in points: what one delivery differs from the next. */
  readonly co2maxSdPct: number;
}
