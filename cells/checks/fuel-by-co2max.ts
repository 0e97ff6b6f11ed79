/** CO2max by stoichiometry, %: natural gas 11.9 and methane 11.7, LPG 13.7 to 14, light oil 15.4, heavy oil 15.9. */
const FUELS: readonly (readonly [fuel: string, from: number, to: number])[] = [
  ['natural_gas', 11.2, 12.5],
  ['propane', 13.2, 14.3],
  ['no2_oil', 14.8, 16.2],
];

/** The fuel whose CO2max this is; '' where it is none of the usual ones. */
export function fuelByCo2max(co2maxPct: number): string {
  return FUELS.find(([, from, to]) => co2maxPct >= from && co2maxPct <= to)?.[0] ?? '';
}
