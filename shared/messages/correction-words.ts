/** What a correction does, as lists, reports and questions tell it. Named functions of strings and numbers. */

export const valueIs = (what: string, reading: string, value: string, unit: string): string =>
  value === ''
    ? `${what} of ${reading} is unknown`
    : `${what} of ${reading} is ${value}${unit === '' ? '' : ` ${unit}`}`;
export const fireIs = (reading: string, fire: string): string => `The fire of ${reading} is ${fire}`;
export const stateIs = (reading: string, state: string): string => `${reading} was read ${state}`;
export const isSetAside = (reading: string): string => `${reading} is set aside`;
export const countsAgain = (reading: string): string => `${reading} counts again`;
export const belongsTo = (from: string, to: string): string => `All readings of ${from} belong to ${to}`;
export const areSwapped = (first: string, second: string, day: string): string =>
  `The readings of ${first} and ${second} on ${day} are swapped`;
/** Which of several readings that agree in everything that names them. */
export const numbered = (reading: string, nth: number): string => (nth > 1 ? `${reading} (number ${nth})` : reading);
export const signed = (what: string, initials: string, madeOn: string, reason: string): string =>
  `${what} (${initials}, ${madeOn}: ${reason})`;
