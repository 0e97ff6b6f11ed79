/** Sentences about fuels. */
export const unknownFuel = (written: string, nearest: string, known: string): string =>
  `The fuel "${written}" is not known${nearest === '' ? '.' : `; did you mean ${nearest}?`} Use one of ${known}, or natural_gas_h2_NN with NN percent hydrogen.`;

export const hydrogenOverAll = (written: string): string =>
  `The fuel "${written}" asks for more than 100 % hydrogen; write natural_gas_h2_NN with NN from 0 to 100.`;

export const notAFuel = (found: string): string =>
  `A fuel of your own is ${found}; give {"name": ..., "mole_pct": {...}} or {"name": ..., "mass_pct": {...}, "gross_MJ_per_kg": ...}.`;
export const badFuelName = (name: string): string =>
  `A fuel of your own is called "${name}"; use small letters, digits and _, beginning with a letter.`;
export const noComposition = (fuel: string): string =>
  `The fuel ${fuel} has no composition; give mole_pct for a gas, mass_pct and gross_MJ_per_kg for a liquid.`;
export const unknownComponent = (fuel: string, name: string, nearest: string, known: string): string =>
  `The fuel ${fuel} holds "${name}", which is not known${nearest === '' ? '.' : `; did you mean ${nearest}?`} Use ${known}.`;
export const badShare = (fuel: string, name: string, found: string): string =>
  `The fuel ${fuel} holds ${found} of ${name}; give percent from 0 to 100.`;
export const sumsNot = (fuel: string, sum: number): string =>
  `The parts of the fuel ${fuel} come to ${sum} %; give percentages that come to 100.`;
export const badHeatingValue = (fuel: string, found: string): string =>
  `The gross heating value of the fuel ${fuel} is ${found}; give gross_MJ_per_kg, between 5 and 150.`;
export const burnsNot = (fuel: string): string => `The fuel ${fuel} holds nothing that burns; check its composition.`;
