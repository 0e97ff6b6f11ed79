import { statedNumber } from '../quantities/stated-number.ts';

/** How a number that nobody knows is printed; also the word for it in formulas. */
export const UNKNOWN = 'unknown';

/** A number for people: five significant digits and all whole ones, its unit, "at least" where it is a bound, "unknown" where it is none. */
export function shownNumber(value: number, unit: string, bound = 0, significant = 5): string {
  if (!Number.isFinite(value)) return UNKNOWN;
  // A pressure of 101325 Pa must not read as 101330.
  const whole = significant < 5 ? 0 : Math.abs(value).toFixed(0).length;
  const digits = String(Number(value.toPrecision(Math.min(21, Math.max(significant, whole)))));
  const text = withUnit(digits, unit);
  return bound === 0 ? text : `${bound > 0 ? 'at least' : 'at most'} ${text}`;
}

const withUnit = (digits: string, unit: string): string =>
  `${digits.replace('-', '−')}${unit === '' ? '' : ` ${unit}`}`;

export interface ShownDoubt {
  /** The number to the decimal place of its doubt; as shown in a calculation where it is exact, a bound or unknown. */
  readonly stated: string;
  /** Standard uncertainty with two significant digits and unit, of a temperature in kelvin; '' where there is none. */
  readonly shownSd: string;
}

/** A number beside its standard uncertainty. What is calculated with keeps its digits, see `shownNumber`. */
export function shownDoubt(value: number, sd: number, unit: string, bound = 0): ShownDoubt {
  const pair = statedNumber(value, sd);
  const stated = pair && bound === 0 ? withUnit(pair.value, unit) : shownNumber(value, unit, bound);
  return { stated, shownSd: pair ? withUnit(pair.sd, unit === '°C' ? 'K' : unit) : '' };
}
