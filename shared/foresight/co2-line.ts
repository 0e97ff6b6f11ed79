import { AIR_OXYGEN_PCT } from '../combustion/oxygen-in-air.ts';

/**
 * Dry CO2 falls on a straight line against dry O2, CO2 = CO2max (1 − O2/20.95), plus the offset that the fleet's measured
 * CO2 shows. The model works in O2 points; a lane whose target is in CO2 is told along this line.
 */
export interface Co2Line {
  readonly co2maxPct: number;
  /** What measured CO2 reads beyond the line, in O2 points (too little CO2 is more O2). */
  readonly offsetO2: number;
}

export const co2AsO2 = (co2Pct: number, co2maxPct: number): number => AIR_OXYGEN_PCT * (1 - co2Pct / co2maxPct);

export const o2AsCo2 = (o2Pct: number, { co2maxPct, offsetO2 }: Co2Line): number =>
  co2maxPct * (1 - (o2Pct + offsetO2) / AIR_OXYGEN_PCT);

/** CO2 points for one O2 point: negative. */
export const co2PerO2 = ({ co2maxPct }: Co2Line): number => -co2maxPct / AIR_OXYGEN_PCT;
