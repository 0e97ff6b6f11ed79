/**
 * US EPA's tabulated fuel factors at 68 °F and 29.92 in. Hg, per million Btu of gross heat (source `epaPart75`). They are
 * averages of real fuels and do not come out of stoichiometry: pure methane gives Fd 8616 and Fc 1005. Where a regulation
 * asks for them, they are used as they stand.
 */
export interface EpaFactors {
  /** Dry flue gas, dscf/MMBtu. */
  readonly fd: number;
  /** CO2, scf/MMBtu. */
  readonly fc: number;
  /** Window of (20.9 - O2) / CO2 in Method 3B, from memory. */
  readonly foLower: number;
  readonly foUpper: number;
  /** CO2, kg/MMBtu (40 CFR 98, table C-1). */
  readonly co2KgPerMMBtu: number;
  /** CH4 and N2O, kg/MMBtu (40 CFR 98, table C-2). */
  readonly ch4KgPerMMBtu: number;
  readonly n2oKgPerMMBtu: number;
}

const factors = (
  [fd, fc]: readonly [number, number],
  [foLower, foUpper]: readonly [number, number],
  [co2KgPerMMBtu, ch4KgPerMMBtu, n2oKgPerMMBtu]: readonly [number, number, number],
): EpaFactors => ({ fd, fc, foLower, foUpper, co2KgPerMMBtu, ch4KgPerMMBtu, n2oKgPerMMBtu });

const NATURAL_GAS = factors([8710, 1040], [1.6, 1.836], [53.06, 1e-3, 1e-4]);

/** By fuel name; fuels that EPA does not tabulate are not in it. */
export const EPA_FACTORS: ReadonlyMap<string, EpaFactors> = new Map([
  ['natural_gas', NATURAL_GAS],
  ['natural_gas_lean', NATURAL_GAS],
  ['natural_gas_rich', NATURAL_GAS],
  ['methane', NATURAL_GAS],
  ['propane', factors([8710, 1190], [1.434, 1.586], [62.87, 3e-3, 6e-4])],
  ['butane', factors([8710, 1250], [1.405, 1.553], [64.77, 3e-3, 6e-4])],
  ['lpg', factors([8710, 1190], [1.434, 1.586], [61.71, 3e-3, 6e-4])],
  ['no2_oil', factors([9190, 1420], [1.26, 1.413], [73.96, 3e-3, 6e-4])],
  ['no6_oil', factors([9190, 1420], [1.21, 1.37], [75.1, 3e-3, 6e-4])],
]);
