/**
 * Arithmetic in twice double precision: a value is high + low with |low| at most half a unit in the last place of high
 * (Dekker 1971, Numer. Math. 18; Knuth, TAOCP vol. 2, 4.2.2). Badly conditioned published data sets need it.
 */
export interface Twofold {
  readonly high: number;
  readonly low: number;
}

const SPLITTER = 134_217_729; // 2^27 + 1

export const twofold = (value: number): Twofold => ({ high: value, low: 0 });

function exactSum(a: number, b: number): Twofold {
  const high = a + b;
  const part = high - a;
  return { high, low: a - (high - part) + (b - part) };
}

function exactProduct(a: number, b: number): Twofold {
  const high = a * b;
  const aBig = SPLITTER * a - (SPLITTER * a - a);
  const bBig = SPLITTER * b - (SPLITTER * b - b);
  const aSmall = a - aBig;
  const bSmall = b - bBig;
  return { high, low: aSmall * bSmall - (high - aBig * bBig - aSmall * bBig - aBig * bSmall) };
}

export function plus(a: Twofold, b: Twofold): Twofold {
  const sum = exactSum(a.high, b.high);
  return exactSum(sum.high, sum.low + a.low + b.low);
}

export const minus = (a: Twofold, b: Twofold): Twofold => plus(a, { high: -b.high, low: -b.low });

export function times(a: Twofold, b: Twofold): Twofold {
  const product = exactProduct(a.high, b.high);
  return exactSum(product.high, product.low + a.high * b.low + a.low * b.high);
}

export function over(a: Twofold, b: Twofold): Twofold {
  const first = a.high / b.high;
  const rest = minus(a, times(b, twofold(first)));
  const second = rest.high / b.high;
  const last = minus(rest, times(b, twofold(second)));
  return plus(exactSum(first, second), twofold(last.high / b.high));
}

export function root(a: Twofold): Twofold {
  if (a.high <= 0) return twofold(0);
  const guess = twofold(Math.sqrt(a.high));
  return over(plus(guess, over(a, guess)), twofold(2));
}
