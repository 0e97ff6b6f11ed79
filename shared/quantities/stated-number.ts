export interface StatedNumber {
  readonly value: string;
  readonly sd: string;
}

/**
 * A number and its standard uncertainty, the uncertainty with two significant digits and the number to the same decimal
 * place (JCGM 100:2008, 7.2.6): 757.01 and 24.9 are 757 and 25. Undefined where there is no such uncertainty.
 */
export function statedNumber(value: number, sd: number): StatedNumber | undefined {
  if (!Number.isFinite(value) || !Number.isFinite(sd) || sd <= 0) return undefined;
  // Its exponent as rounded: 0.0996 is 0.10.
  const exponent = Number(sd.toExponential(1).split('e')[1]);
  const places = 1 - exponent;
  if (places > MOST_PLACES) return undefined;
  const step = Number(`1e${-places}`);
  const write = (number: number): string =>
    (places >= 0 ? number.toFixed(places) : String(Math.round(number / step) * step)).replace(/^-(0(\.0*)?)$/, '$1');
  return { value: write(value), sd: write(sd) };
}

/** `toFixed` is asked for no more. */
const MOST_PLACES = 20;
