/**
 * The few steps between O2, CO2 and excess air that others need one number at a time (bands, projections, checks of an
 * import). The columns of `derived` come from the relations; a test holds the two together.
 * Percent are of dry flue gas; excess air is a fraction (0.15 = 15 %); NaN where there is no answer.
 */
import type { FuelProperties } from '../fuels/fuel-properties.ts';
import { AIR_OXYGEN_PCT } from './oxygen-in-air.ts';

type Ratio = Pick<FuelProperties, 'dryRatio' | 'co2maxPct'>;

export function excessAirFromO2(o2Pct: number, { dryRatio }: Ratio): number {
  return o2Pct < AIR_OXYGEN_PCT ? (dryRatio * o2Pct) / (AIR_OXYGEN_PCT - o2Pct) : Number.NaN;
}

export function o2FromExcessAir(excessAir: number, { dryRatio }: Ratio): number {
  return excessAir >= 0 ? (AIR_OXYGEN_PCT * excessAir) / (dryRatio + excessAir) : Number.NaN;
}

export function co2FromO2(o2Pct: number, { co2maxPct }: Ratio): number {
  return o2Pct < AIR_OXYGEN_PCT ? co2maxPct * (1 - o2Pct / AIR_OXYGEN_PCT) : Number.NaN;
}

/** The CO2max that an O2 and a CO2 reading together imply, %: a fuel's fingerprint, or an instrument's fuel setting. */
export function impliedCo2maxPct(o2Pct: number, co2Pct: number): number {
  return o2Pct < AIR_OXYGEN_PCT ? (AIR_OXYGEN_PCT * co2Pct) / (AIR_OXYGEN_PCT - o2Pct) : Number.NaN;
}
