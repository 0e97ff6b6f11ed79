/** Exponents of length, mass, time, temperature, amount of substance, money and electric current. */
export type Dimension = readonly [
  length: number,
  mass: number,
  time: number,
  temperature: number,
  amount: number,
  money: number,
  current: number,
];

/** A unit of measurement: a value in it times `factor`, plus `offset`, is the value in SI base units. */
export interface Unit {
  /** UCUM code, case-sensitive. */
  readonly code: string;
  /** As people read it. */
  readonly shown: string;
  readonly dimension: Dimension;
  readonly factor: number;
  /** Non-zero only for temperatures counted from another zero than 0 K. */
  readonly offset: number;
  /**
   * True where values are points on a scale with a zero of its own (a temperature in °C, a date), which can be
   * subtracted but not added or multiplied. A temperature difference is in kelvin and no point.
   */
  readonly point: boolean;
}
