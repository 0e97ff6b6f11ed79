import { chanceFrom } from './random.ts';

/** Outside temperature (°C) and barometer (kPa) of one day on the campus: a cool temperate year, coldest in mid-January, and weather on top. */
export function weatherOn(day: number): { readonly outsideC: number; readonly barometerKPa: number } {
  const chance = chanceFrom(`weather ${day}`);
  const yearPart = (day % 365.2425) / 365.2425;
  const seasonal = 11 - 12 * Math.cos(2 * Math.PI * (yearPart - 0.05));
  return { outsideC: seasonal + chance.normal(0, 3.5), barometerKPa: 101.1 + chance.normal(0, 0.6) };
}
