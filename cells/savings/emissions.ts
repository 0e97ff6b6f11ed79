import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';

/** Kilograms per MMBtu of gross heat: 40 CFR 98 Table C-1 (CO2) and C-2 (CH4, N2O). */
const PER_MMBTU: Readonly<Record<string, { readonly co2: number; readonly ch4: number; readonly n2o: number }>> = {
  natural_gas: { co2: 53.06, ch4: 1e-3, n2o: 1e-4 },
  natural_gas_lean: { co2: 53.06, ch4: 1e-3, n2o: 1e-4 },
  natural_gas_rich: { co2: 53.06, ch4: 1e-3, n2o: 1e-4 },
  propane: { co2: 62.87, ch4: 3e-3, n2o: 6e-4 },
  lpg: { co2: 61.71, ch4: 3e-3, n2o: 6e-4 },
  butane: { co2: 64.77, ch4: 3e-3, n2o: 6e-4 },
  no2_oil: { co2: 73.96, ch4: 3e-3, n2o: 6e-4 },
  no6_oil: { co2: 75.1, ch4: 3e-3, n2o: 6e-4 },
};

/** Global warming potentials over 100 years, 40 CFR 98 Table A-1 as in force from 2025. */
const GWP = { ch4: 28, n2o: 265 } as const;

export const KWH_PER_MMBTU = 293.07107;
const MJ_PER_KWH = 3.6;
const KG_PER_MOL_CO2 = 44.0095e-3;

/** kg CO2e per kWh of gross heat; from the fuel's carbon where the rule lists no factor; NaN for a fuel nobody knows. */
export function emissionFactor(fuel: string, properties: FuelProperties | undefined): number {
  const listed = Object.hasOwn(PER_MMBTU, fuel) ? PER_MMBTU[fuel] : undefined;
  if (listed) return (listed.co2 + listed.ch4 * GWP.ch4 + listed.n2o * GWP.n2o) / KWH_PER_MMBTU;
  return properties ? properties.carbonDioxide * KG_PER_MOL_CO2 * MJ_PER_KWH : Number.NaN;
}
