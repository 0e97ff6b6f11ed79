/**
 * The saturation line of water, IAPWS-IF97 region 4 (source `if97`), 0 to 373.946 °C. Its backward equation is the
 * exact inverse of the forward one, so that a dew point needs no iteration. Below 0 °C water's vapor pressure over
 * supercooled water is taken from the same equation down to -40 °C; dew points there are of no consequence here.
 */
const N = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;
const LOWEST_K = 233.15;
const CRITICAL_K = 647.096;
const CRITICAL_PA = 22.064e6;

/** Vapor pressure in Pa at a temperature in K, NaN outside the line. */
export function saturationPressurePa(temperatureK: number): number {
  if (!(temperatureK >= LOWEST_K && temperatureK <= CRITICAL_K)) return Number.NaN;
  const t = temperatureK + N[8] / (temperatureK - N[9]);
  const a = t * t + N[0] * t + N[1];
  const b = N[2] * t * t + N[3] * t + N[4];
  const c = N[5] * t * t + N[6] * t + N[7];
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c));
  return root * root * (root * root) * 1e6;
}

/** Temperature in K at which water vapor of the given partial pressure (Pa) is saturated, NaN outside the line. */
export function saturationTemperatureK(pressurePa: number): number {
  if (!(pressurePa > 0 && pressurePa <= CRITICAL_PA)) return Number.NaN;
  const beta = Math.sqrt(Math.sqrt(pressurePa / 1e6));
  const e = beta * beta + N[2] * beta + N[5];
  const f = N[0] * beta * beta + N[3] * beta + N[6];
  const g = N[1] * beta * beta + N[4] * beta + N[7];
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const sum = N[9] + d;
  const kelvin = (sum - Math.sqrt(sum * sum - 4 * (N[8] + N[9] * d))) / 2;
  return kelvin >= LOWEST_K ? kelvin : Number.NaN;
}

/**
 * Slope of the vapor pressure, Pa/K, at a temperature and the pressure that belongs to it: the line is one polynomial
 * F(theta, beta) = 0, so that d beta / d theta = -F_theta / F_beta.
 */
export function saturationSlopePaPerK(temperatureK: number, pressurePa: number): number {
  const offset = temperatureK - N[9];
  const t = temperatureK + N[8] / offset;
  const b = Math.sqrt(Math.sqrt(pressurePa / 1e6));
  const byTheta = b * b * (2 * t + N[0]) + b * (2 * N[2] * t + N[3]) + 2 * N[5] * t + N[6];
  const byBeta = 2 * b * (t * (t + N[0]) + N[1]) + t * (N[2] * t + N[3]) + N[4];
  return 4e6 * b * b * b * (-byTheta / byBeta) * (1 - N[8] / (offset * offset));
}
