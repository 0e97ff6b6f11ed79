import { NASA_FITS, NASA_GAS_CONSTANT, type Species } from './nasa-coefficients.ts';

/** The datum of every enthalpy here, 25 °C: that of the heating values. */
export const DATUM_K = 298.15;
const LOWEST_K = 200;
const HIGHEST_K = 1500;

/** H(T) - H(298.15 K) and cp of one species. */
export interface EnthalpyFunction {
  /** J/mol at an absolute temperature in K; NaN outside 200 to 1500 K (above 1000 K the fit is stretched). */
  readonly rise: (temperatureK: number) => number;
  /** J/(mol K) */
  readonly heatCapacity: (temperatureK: number) => number;
}

export function enthalpyFunction(species: Species): EnthalpyFunction {
  const { a, b1 } = NASA_FITS[species];
  const R = NASA_GAS_CONSTANT;
  // Coefficients of H itself, so that one call costs one logarithm, one division and a Horner chain.
  const [h1, h2, h3, h4, h5, h6, h7] = [
    -a[0] * R,
    a[1] * R,
    a[2] * R,
    (a[3] / 2) * R,
    (a[4] / 3) * R,
    (a[5] / 4) * R,
    (a[6] / 5) * R,
  ];
  const absolute = (t: number): number =>
    h1 / t + h2 * Math.log(t) + t * (h3 + t * (h4 + t * (h5 + t * (h6 + t * h7)))) + b1 * R;
  const datum = absolute(DATUM_K);
  return {
    rise: (t) => (t >= LOWEST_K && t <= HIGHEST_K ? absolute(t) - datum : Number.NaN),
    heatCapacity: (t) => R * ((a[0] / t + a[1]) / t + a[2] + t * (a[3] + t * (a[4] + t * (a[5] + t * a[6])))),
  };
}

/** H(T) - H(298.15 K) in J/mol at a temperature in K. */
export const enthalpyRise = (species: Species, temperatureK: number): number =>
  enthalpyFunction(species).rise(temperatureK);
