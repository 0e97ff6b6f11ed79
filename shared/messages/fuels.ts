/** Sentences about fuels. */
export const unknownFuel = (written: string, nearest: string, known: string): string =>
  `The fuel "${written}" is not known${nearest === '' ? '.' : `; did you mean ${nearest}?`} Use one of ${known}, or natural_gas_h2_NN with NN percent hydrogen.`;

export const hydrogenOverAll = (written: string): string =>
  `The fuel "${written}" asks for more than 100 % hydrogen; write natural_gas_h2_NN with NN from 0 to 100.`;
