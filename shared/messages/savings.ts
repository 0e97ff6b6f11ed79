/** Sentences of the savings cell. */
import { count, number } from './words.ts';

export const badCell = (parameter: string, found: string): string =>
  `savings: ${parameter} must be the name of a cell, or empty, it is ${found}; give a name.`;
export const badChoice = (what: string, found: string, choices: string): string =>
  `savings: ${what} must be one of ${choices}, it is ${found}; choose one of these.`;
export const wrongInput = (cell: string, table: string, columns: string): string =>
  `savings: table ${table} of cell ${cell} lacks ${columns}; name a cell of the right kind.`;

export const comparedWithNoTuneUp = (): string => 'no tune-up, over the first year';
export const comparedWithNextVisit = (on: string): string => `the next planned visit, on ${on}`;
export const comparedWithUnplanned = (): string => 'no tune-up, over the first year (no next visit planned)';

export const counterfactualName = (value: string): string =>
  value === 'next_planned_visit' ? 'the next planned visit' : 'no tune-up';
export const airName = (value: string): string => (value === 'measured' ? 'as measured' : 'at reference air');

export function savingsAnswer(
  visits: number,
  told: number,
  costSaved: number,
  costLower: number,
  costUpper: number,
  costed: number,
  currency: string,
): string {
  if (visits === 0) return 'No visit has readings as found and as left at one fire, so nothing can be said of savings.';
  const money =
    costed > 0
      ? `; where fuel use and price are known (${costed}) the savings add up to ${number(costSaved, 0)} a year in ${currency === '' ? "the register's money" : currency} (90 % ${number(costLower, 0)} to ${number(costUpper, 0)})`
      : '; no cost is given, since no fuel use with a price is known';
  return `Of the last visits to ${count(visits, 'unit and fuel', 'units and fuels')}, ${told} saved or cost fuel that can be told from nothing${money}.`;
}

export const shareUnknown = (units: number): string =>
  units === 0
    ? ''
    : `${count(units, 'row has', 'rows have')} no known share of fuel burnt at low fire: the middle takes one half, the interval spans none to all.`;
export const whatSavingsAre = (): string =>
  'Fuel saved is the sum over the fires of share (1 - found/left) in gross combustion efficiency; cycling, jacket and purge losses are outside of it.';
export const sharedAnalyzer = (): string =>
  'Found and left of a visit share the analyzer, so that its bias cancels; over units the intervals of one analyzer are added, not averaged away.';
export const coldStart = (units: number): string =>
  units === 0
    ? ''
    : `In ${count(units, 'row', 'rows')} the flue was left more than 10 °C hotter or colder than found: was the boiler at steady state? The column with the flue as found shows what O2 alone did.`;
export const richFixed = (units: number): string =>
  units === 0
    ? ''
    : `${count(units, 'row costs', 'rows cost')} fuel: a burner found rich and set right uses more air, and was the more worth the visit.`;
