import type { CombinedTerm } from '../../shared/combustion/combined-uncertainty.ts';
import { enthalpyRise } from '../../shared/combustion/enthalpy.ts';
import { excessAirFromO2, o2FromExcessAir } from '../../shared/combustion/flue-gas.ts';
import type { BudgetTerm } from '../../shared/formula/budget.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { efficiencyAt, efficiencySlopes, type HeatReading, MISSING_AIR_C } from './reference-efficiency.ts';

/** Standard uncertainties of what a reading's efficiency rests on, and whose they are. Points, kelvin. */
export interface HeatSpread {
  /** Of O2 as derived, less what the fuel brings into it. */
  readonly o2Pct: number;
  /** Of O2 by the fuel's CO2max, where O2 was calculated from CO2; else 0. */
  readonly o2ByFuelPct: number;
  /** Of O2 at reference air, all told. */
  readonly referenceO2Pct: number;
  readonly flueK: number;
  readonly airK: number;
  /** One analyzer for found and left of a visit where none is named. */
  readonly analyzer: string;
}

/** What the reading shares with others, beside its analyzer. */
export interface HeatKeys {
  readonly fuel: string;
  readonly unit: string;
}

/**
 * The uncertain inputs of an efficiency as it is compared, each with what it contributes in points of efficiency. What the
 * step to reference air brings in (air temperature, exponent, season) is one error of the burner: found and left of a visit
 * share it.
 * @param o2Pct O2 at which it is compared; @param referenceAirC air that it is brought to, NaN for as measured
 */
export function heatTerm(
  reading: HeatReading,
  spread: HeatSpread,
  o2Pct: number,
  referenceAirC: number,
  fuel: FuelProperties,
  keys: HeatKeys,
  weight: number,
): CombinedTerm {
  const isReference = Number.isFinite(referenceAirC);
  const ownAir = Number.isFinite(reading.airC) ? reading.airC : MISSING_AIR_C;
  const perO2 = slopeOverO2(reading, o2Pct, isReference ? referenceAirC : ownAir, fuel);
  const carried = isReference ? referenceSlope(reading.o2Pct, o2Pct, fuel) : 1;
  const { perKelvin } = efficiencySlopes({ ...reading, o2Pct }, fuel);
  const byBurner = Math.sqrt(
    Math.max(0, spread.referenceO2Pct ** 2 - carried ** 2 * (spread.o2Pct ** 2 + spread.o2ByFuelPct ** 2)),
  );
  const part = (input: string, slope: number, sd: number): BudgetTerm => ({
    input,
    value: Number.NaN,
    sd,
    slope,
    contribution: slope * sd,
  });
  const perAir = isReference ? 0 : slopeOverAir(o2Pct, ownAir, fuel);
  // An air temperature that was not read is taken the same for both readings, and so is its error.
  const airInput = Number.isFinite(reading.airC) ? 'burner.air_C' : 'burner.temperature_exponent';
  const budget = [
    part('reading.o2_pct', -perO2 * carried, spread.o2Pct),
    part('fuel.co2_max', -perO2 * carried, spread.o2ByFuelPct),
    part('reading.flue_C', -perKelvin, spread.flueK),
    part('burner.temperature_exponent', -perO2, isReference && byBurner > 0 ? byBurner : 0),
    part(airInput, perAir, spread.airK),
  ];
  return { weight, budget, analyzer: spread.analyzer, ...keys };
}

/** Points of efficiency lost for a point of O2 more. */
function slopeOverO2(reading: HeatReading, o2Pct: number, airC: number, fuel: FuelProperties): number {
  const step = 0.05;
  const at = (o2: number): number => efficiencyAt(reading, o2, airC, fuel);
  return (at(o2Pct - step) - at(o2Pct + step)) / (2 * step);
}

/** Points of O2 at reference air for a point of O2 as read. */
function referenceSlope(readPct: number, referencePct: number, fuel: FuelProperties): number {
  const [read, reference] = [readPct, referencePct].map((o2) => excessAirFromO2(o2, fuel));
  const factor = (1 + reference) / (1 + read);
  const step = 0.02;
  const [below, above] = [-step, step].map((d) =>
    o2FromExcessAir((1 + excessAirFromO2(readPct + d, fuel)) * factor - 1, fuel),
  );
  const slope = (above - below) / (2 * step);
  // At the edge, where reference air leaves no excess, the slope of one to one is near enough.
  return Number.isFinite(slope) ? slope : 1;
}

/** Points of efficiency for a kelvin of combustion air: the heat that it brings in. */
function slopeOverAir(o2Pct: number, airC: number, fuel: FuelProperties): number {
  const heat = enthalpyRise('air', airC + 273.65) - enthalpyRise('air', airC + 272.65);
  return (100 * fuel.air * (1 + excessAirFromO2(o2Pct, fuel)) * heat) / 1e6;
}
