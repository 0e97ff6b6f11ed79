import { ln } from '../quantities/elementary.ts';
import { NASA_FITS, NASA_GAS_CONSTANT, type NasaFit, type Species } from './nasa-coefficients.ts';

/** The datum of every enthalpy here, 25 °C: that of the heating values. */
export const DATUM_K = 298.15;
const LOWEST_K = 200;
/** Above 1000 K the fits are stretched; no boiler's flue is there. */
const HIGHEST_K = 1500;

/** Coefficients of H itself in J/mol, so that a value costs one logarithm, one division and a Horner chain. */
type Coefficients = readonly [number, number, number, number, number, number, number, datum: number];

function coefficientsOf({ a }: NasaFit): Coefficients {
  const R = NASA_GAS_CONSTANT;
  const plain = [
    -a[0] * R,
    a[1] * R,
    a[2] * R,
    (a[3] / 2) * R,
    (a[4] / 3) * R,
    (a[5] / 4) * R,
    (a[6] / 5) * R,
  ] as const;
  return [...plain, enthalpy([...plain, 0], DATUM_K, ln(DATUM_K))];
}

function enthalpy([h1, h2, h3, h4, h5, h6, h7, datum]: Coefficients, t: number, logT: number): number {
  return h1 / t + h2 * logT + t * (h3 + t * (h4 + t * (h5 + t * (h6 + t * h7)))) - datum;
}

const COEFFICIENTS = Object.fromEntries(
  Object.entries(NASA_FITS).map(([species, fit]) => [species, coefficientsOf(fit)]),
) as Readonly<Record<Species, Coefficients>>;

/** H(T) - H(298.15 K) in J/mol at a temperature in K; NaN outside 200 to 1500 K. */
export function enthalpyRise(species: Species, temperatureK: number): number {
  if (!(temperatureK >= LOWEST_K && temperatureK <= HIGHEST_K)) return Number.NaN;
  return enthalpy(COEFFICIENTS[species], temperatureK, ln(temperatureK));
}

/** cp in J/(mol K) at a temperature in K. */
export function heatCapacity(species: Species, temperatureK: number): number {
  const { a } = NASA_FITS[species];
  const t = temperatureK;
  return NASA_GAS_CONSTANT * ((a[0] / t + a[1]) / t + a[2] + t * (a[3] + t * (a[4] + t * (a[5] + t * a[6]))));
}

/** `enthalpyRise` over temperatures in K and their natural logarithms. */
export function enthalpyRises(
  species: Species,
  out: Float64Array,
  temperatures: Float64Array,
  logarithms: Float64Array,
  n: number,
): void {
  const [h1, h2, h3, h4, h5, h6, h7, datum] = COEFFICIENTS[species];
  for (let i = 0; i < n; i++) {
    const t = temperatures[i];
    const h = h1 / t + h2 * logarithms[i] + t * (h3 + t * (h4 + t * (h5 + t * (h6 + t * h7)))) - datum;
    out[i] = t >= LOWEST_K && t <= HIGHEST_K ? h : Number.NaN;
  }
}

/** `heatCapacity` over temperatures in K. */
export function heatCapacities(species: Species, out: Float64Array, temperatures: Float64Array, n: number): void {
  const [a1, a2, a3, a4, a5, a6, a7] = NASA_FITS[species].a;
  for (let i = 0; i < n; i++) {
    const t = temperatures[i];
    const inverse = 1 / t;
    const cp = (a1 * inverse + a2) * inverse + a3 + t * (a4 + t * (a5 + t * (a6 + t * a7)));
    out[i] = NASA_GAS_CONSTANT * cp;
  }
}
