import { NASA_FITS, NASA_GAS_CONSTANT, type NasaFit } from '../../shared/combustion/nasa-coefficients.ts';
import { saturationPressurePa, saturationTemperatureK } from '../../shared/combustion/saturation.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { ln, power } from '../../shared/quantities/elementary.ts';

/** What the loop reads, a row at a time. */
export interface LoopInput {
  readonly o2: Float64Array;
  readonly co: Float64Array;
  readonly nox: Float64Array;
  readonly flue: Float64Array;
  readonly air: Float64Array;
  readonly fixed: Float64Array;
  readonly running: Float64Array;
  readonly fuelCodes: Int32Array;
  readonly fuels: readonly FuelProperties[];
  /** Density exponents over temperature and pressure, by row of the register. */
  readonly registerRow: Int32Array;
  readonly exponents: readonly (readonly [number, number])[];
}

type Coefficients = readonly [number, number, number, number, number, number, number];
const coefficients = ({ a }: NasaFit): Coefficients => {
  const R = NASA_GAS_CONSTANT;
  return [-a[0] * R, a[1] * R, a[2] * R, (a[3] / 2) * R, (a[4] / 3) * R, (a[5] / 4) * R, (a[6] / 5) * R];
};
const H = (c: Coefficients, t: number, l: number): number =>
  c[0] / t + c[1] * l + t * (c[2] + t * (c[3] + t * (c[4] + t * (c[5] + t * c[6]))));
const [AIR, O2, CO2, N2, H2O] = (['air', 'O2', 'CO2', 'N2', 'H2O'] as const).map((gas) => coefficients(NASA_FITS[gas]));
const T0 = 298.15;
const [O2_0, CO2_0, N2_0, H2O_0] = [O2, CO2, N2, H2O].map((gas) => H(gas, T0, ln(T0)));

/** The derivations of the relations as a programmer would write them by hand, values only, into arrays that are reused. */
export function handWrittenLoop(input: LoopInput, out: readonly Float64Array[], rows: number): void {
  const { o2, co, nox, flue, air, fixed, running, fuelCodes, fuels, registerRow, exponents } = input;
  const [oxygen, dioxide, excess, lambda, airFree, at3, ratio, nox3, loss, gross, net, dew, drop, o2Ref, co2Ref] = out;
  for (let i = 0; i < rows; i++) {
    const fuel = fuels[fuelCodes[i]];
    const read = o2[i];
    const x = read >= 0 && read < 20.9 ? read : Number.NaN;
    oxygen[i] = x;
    const c = fuel.co2maxPct * (1 - x / 20.95);
    dioxide[i] = c;
    const e = (fuel.dryRatio * x) / (20.95 - x);
    excess[i] = 100 * e;
    const l = 1 + e;
    lambda[i] = l;
    const af = (co[i] * 20.9) / (20.9 - x);
    airFree[i] = af;
    at3[i] = (af * 17.9) / 20.9;
    ratio[i] = co[i] / c / 1e4;
    nox3[i] = (nox[i] * 17.9) / (20.9 - x);
    const ta = air[i] + 273.15;
    const tf = flue[i] >= air[i] ? flue[i] + 273.15 : Number.NaN;
    const [logF, logA] = [ln(tf), ln(ta)];
    const dry = fuel.dryFlue + e * fuel.air;
    const water = fuel.water;
    let vapor = water;
    if (tf < 358.15) {
      const p = saturationPressurePa(tf);
      vapor = Math.min(water, (dry * p) / (101_325 - p));
    }
    const dryHeat =
      l * fuel.air * (H(AIR, tf, logF) - H(AIR, ta, logA)) -
      fuel.oxygen * (H(O2, tf, logF) - O2_0) +
      fuel.carbonDioxide * (H(CO2, tf, logF) - CO2_0) +
      fuel.nitrogen * (H(N2, tf, logF) - N2_0);
    const waterHeat = vapor * (44_013 + H(H2O, tf, logF) - H2O_0) + (water - vapor) * 75.33 * (tf - T0);
    const coHeat = co[i] * 1e-6 * dry * 282_980;
    const q = (dryHeat + waterHeat + (Number.isNaN(coHeat) ? 0 : coHeat)) / 1e4;
    loss[i] = q;
    gross[i] = 100 - q;
    net[i] = (100 - q) / fuel.netOverGross;
    dew[i] = saturationTemperatureK((101_325 * water) / (dry + water)) - 273.15;
    drop[i] = fixed[i] - running[i];
    const [byTemperature, byPressure] = exponents[registerRow[i]];
    const factor = power(ta / 293.15, byTemperature) * power(101_325 / 101_325, byPressure);
    const eRef = l * factor - 1;
    o2Ref[i] = (20.95 * eRef) / (fuel.dryRatio + eRef);
    const eCo2 = (1 + fuel.dryRatio * (fuel.co2maxPct / c - 1)) * factor - 1;
    co2Ref[i] = (fuel.co2maxPct * fuel.dryRatio) / (fuel.dryRatio + eCo2);
  }
}
