import type { WorkedReading } from './worked-reading.ts';

/** A number in a result table of a cell. */
export interface NumberPlace {
  readonly cell: string;
  readonly column: string;
  readonly row: number;
}

/** One relation of a chain, with the numbers of one row. */
export interface WorkingStep {
  readonly name: string;
  readonly title: string;
  /** "O2 = ..." with the symbols of what it reads. */
  readonly symbols: string;
  /** The same with numbers and units put in. */
  readonly numbers: string;
  /** The result with its unit; "unknown", or "at least 4000 ppm". */
  readonly result: string;
  /** The same to the decimal place of its standard uncertainty, as it is told beside it. */
  readonly stated: string;
  readonly value: number;
  readonly sd: number;
  readonly unit: string;
  /** Key of a bibliography entry, '' for the user's own. */
  readonly source: string;
  readonly validity: string;
}

/** An input that the chain begins with: a reading, a property of the fuel, a condition, a constant, another cell's number. */
export interface WorkingInput {
  readonly name: string;
  readonly title: string;
  readonly symbol: string;
  /** As it goes into the relations. */
  readonly shown: string;
  /** To the decimal place of its standard uncertainty, as it is told beside it. */
  readonly stated: string;
  /** Standard uncertainty with unit, '' where it is taken as exact. */
  readonly shownSd: string;
  /** Where the input is a number that has a working of its own. */
  readonly from?: NumberPlace;
}

/** What one uncertain input contributes to the result. */
export interface WorkingShare {
  /** The input's name. */
  readonly input: string;
  readonly title: string;
  readonly value: number;
  /** Its standard uncertainty. */
  readonly sd: number;
  /** Partial derivative of the result with respect to it. */
  readonly slope: number;
  /** slope x sd, with its sign: what it contributes, in the result's unit. */
  readonly contribution: number;
  /** Percent of the result's variance. */
  readonly percent: number;
}

/** A function of the formula language that the chain calls. */
export interface CalledFunction {
  /** "otherwise(x, y)" */
  readonly usage: string;
  readonly title: string;
}

/** How one derived number came about, down to the readings. */
export interface Working {
  readonly name: string;
  readonly title: string;
  /** From the readings up; the last is the number asked about. */
  readonly steps: readonly WorkingStep[];
  readonly inputs: readonly WorkingInput[];
  /** Greatest contribution first; empty where the result is exact or its uncertainty is not made of inputs. */
  readonly budget: readonly WorkingShare[];
  readonly functions: readonly CalledFunction[];
  /** The readings that it comes from. */
  readonly readings: readonly WorkedReading[];
}
