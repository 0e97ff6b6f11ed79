/** How a number that nobody knows is printed; also the word for it in formulas. */
export const UNKNOWN = 'unknown';

/** A number for people: five significant digits and all whole ones, its unit, "at least" where it is a bound, "unknown" where it is none. */
export function shownNumber(value: number, unit: string, bound = 0, significant = 5): string {
  if (!Number.isFinite(value)) return UNKNOWN;
  // A pressure of 101325 Pa must not read as 101330.
  const whole = significant < 5 ? 0 : Math.abs(value).toFixed(0).length;
  const digits = String(Number(value.toPrecision(Math.min(21, Math.max(significant, whole)))));
  const text = `${digits.replace('-', '−')}${unit === '' ? '' : ` ${unit}`}`;
  return bound === 0 ? text : `${bound > 0 ? 'at least' : 'at most'} ${text}`;
}

/** A standard uncertainty for people: three significant digits; of a temperature in kelvin. */
export const shownSpread = (sd: number, unit: string): string => shownNumber(sd, unit === '°C' ? 'K' : unit, 0, 3);
