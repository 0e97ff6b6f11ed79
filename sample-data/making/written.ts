/** A number as an instrument prints it, with a fixed number of decimals; what was not read is empty. */
export const written = (value: number, decimals: number): string =>
  Number.isNaN(value) ? '' : value.toFixed(decimals).replace(/^-(0(?:\.0+)?)$/, '$1');

/** °C to whole °F, as crew one's instrument prints it. */
export const fahrenheit = (celsius: number): string => written(celsius * 1.8 + 32, 0);
