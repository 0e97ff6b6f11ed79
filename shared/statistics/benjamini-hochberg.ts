/**
 * False discovery rate of each test when it and all with a smaller p value are called discoveries
 * (Benjamini and Hochberg 1995, step-up; the "adjusted p value"). Holds under independence and positive dependence.
 * @param pValues in any order; NaN (no test) stays NaN and does not count as a test
 */
export function benjaminiHochberg(pValues: ArrayLike<number>): Float64Array {
  const rates = new Float64Array(pValues.length).fill(Number.NaN);
  const order = Array.from({ length: pValues.length }, (_, i) => i).filter((i) => !Number.isNaN(pValues[i]));
  order.sort((a, b) => pValues[a] - pValues[b]);
  let smallest = 1;
  for (let rank = order.length; rank >= 1; rank--) {
    const test = order[rank - 1];
    smallest = Math.min(smallest, (pValues[test] * order.length) / rank);
    rates[test] = smallest;
  }
  return rates;
}
