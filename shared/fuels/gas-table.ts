/** A component of a gas: molar mass, atoms, and its molar heating values from ISO 6976 at five temperatures of combustion. */
export interface GasComponent {
  /** g/mol */
  readonly molarMass: number;
  readonly carbon: number;
  readonly hydrogen: number;
  readonly oxygen: number;
  readonly nitrogen: number;
  /** Gross and net molar heating values, kJ/mol, ideal gas, by temperature of combustion. */
  readonly gross: HeatingValues;
  readonly net: HeatingValues;
  /** Summation factor s at 15 °C and 101.325 kPa, for the compression factor of a mixture. */
  readonly summation15: number;
}

export interface HeatingValues {
  readonly at0C: number;
  readonly at15C: number;
  readonly at60F: number;
  readonly at20C: number;
  readonly at25C: number;
}

type Row = readonly [
  name: string,
  molarMass: number,
  atoms: readonly [carbon: number, hydrogen: number, oxygen: number, nitrogen: number],
  gross: readonly [number, number, number, number, number],
  net: readonly [number, number, number, number, number],
  summation15: number,
];

/** Molar evaporation heat of water at the same five temperatures, kJ/mol (ISO 6976:2016). */
export const WATER_LATENT: HeatingValues = { at0C: 45.064, at15C: 44.431, at60F: 44.408, at20C: 44.222, at25C: 44.013 };

const NONE = [0, 0, 0, 0, 0] as const;
/** A net value at 20 °C is the gross one less the water's latent heat, as for every temperature. */
const net20 = (gross: number, hydrogen: number): number => gross - (hydrogen / 2) * WATER_LATENT.at20C;

/** A hydrocarbon by its gross values; the net ones follow from the water that it burns to. */
function hydrocarbon(
  name: string,
  molarMass: number,
  carbon: number,
  hydrogen: number,
  gross: Row[3],
  summation15: number,
): Row {
  const latent = [WATER_LATENT.at0C, WATER_LATENT.at15C, WATER_LATENT.at60F, WATER_LATENT.at20C, WATER_LATENT.at25C];
  const [at0C, at15C, at60F, at20C, at25C] = gross.map((value, i) => value - (hydrogen / 2) * latent[i]);
  return [name, molarMass, [carbon, hydrogen, 0, 0], gross, [at0C, at15C, at60F, at20C, at25C], summation15];
}

/** ISO 6976:2016, Table 3 and Table 2 (source `iso6976`); hydrogen, carbon monoxide and water agree with it to 0.02 kJ/mol. */
const ROWS: readonly Row[] = [
  [
    'methane',
    16.04246,
    [1, 4, 0, 0],
    [892.92, 891.51, 891.46, 891.05, 890.58],
    [802.82, 802.69, 802.69, net20(891.05, 4), 802.6],
    0.04452,
  ],
  [
    'ethane',
    30.06904,
    [2, 6, 0, 0],
    [1564.35, 1562.14, 1562.06, 1561.42, 1560.69],
    [1429.12, 1428.84, 1428.83, net20(1561.42, 6), 1428.64],
    0.0919,
  ],
  [
    'propane',
    44.09562,
    [3, 8, 0, 0],
    [2224.03, 2221.1, 2220.99, 2220.13, 2219.17],
    [2043.71, 2043.37, 2043.35, net20(2220.13, 8), 2043.11],
    0.1344,
  ],
  [
    'n_butane',
    58.1222,
    [4, 10, 0, 0],
    [2883.35, 2879.76, 2879.63, 2878.58, 2877.4],
    [2658.45, 2657.6, 2657.58, net20(2878.58, 10), 2657.32],
    0.184,
  ],
  [
    'i_butane',
    58.1222,
    [4, 10, 0, 0],
    [2874.21, 2870.58, 2870.45, 2869.39, 2868.2],
    [2648.83, 2648.42, 2648.4, net20(2869.39, 10), 2648.12],
    0.1722,
  ],
  [
    'n_pentane',
    72.14878,
    [5, 12, 0, 0],
    [3542.91, 3538.6, 3538.45, 3537.19, 3535.77],
    [3272.45, 3272.0, 3271.98, net20(3537.19, 12), 3271.67],
    0.2361,
  ],
  hydrocarbon('i_pentane', 72.14878, 5, 12, [3536.01, 3531.68, 3531.52, 3530.25, 3528.83], 0.2251),
  hydrocarbon('neo_pentane', 72.14878, 5, 12, [3521.75, 3517.44, 3517.28, 3516.02, 3514.61], 0.204),
  hydrocarbon('n_hexane', 86.17536, 6, 14, [4203.24, 4198.24, 4198.06, 4196.6, 4194.95], 0.3001),
  hydrocarbon('n_heptane', 100.20194, 7, 16, [4862.88, 4857.18, 4856.98, 4855.31, 4853.43], 0.3668),
  hydrocarbon('ethylene', 28.05316, 2, 4, [1413.55, 1412.12, 1412.07, 1411.65, 1411.18], 0.0799),
  hydrocarbon('propylene', 42.07974, 3, 6, [2061.57, 2059.43, 2059.35, 2058.73, 2058.02], 0.1267),
  hydrocarbon('benzene', 78.11184, 6, 6, [3305.12, 3302.9, 3302.81, 3302.16, 3301.43], 0.2527),
  [
    'hydrogen',
    2.0159,
    [0, 2, 0, 0],
    [286.63, 286.15, 286.15, 285.99, 285.83],
    [241.56, 241.72, 241.72, net20(285.99, 2), 241.81],
    -0.01,
  ],
  [
    'carbon_monoxide',
    28.01,
    [1, 0, 1, 0],
    [282.8, 282.91, 282.91, 282.95, 282.98],
    [282.8, 282.91, 282.91, 282.95, 282.98],
    0.0217,
  ],
  ['nitrogen', 28.0134, [0, 0, 0, 2], NONE, NONE, 0.017],
  ['carbon_dioxide', 44.0095, [1, 0, 2, 0], NONE, NONE, 0.0752],
  ['oxygen', 31.9988, [0, 0, 2, 0], NONE, NONE, 0.0276],
  ['water', 18.01528, [0, 2, 1, 0], [45.064, 44.431, 44.408, 44.222, 44.013], NONE, 0.2562],
];

const heats = ([at0C, at15C, at60F, at20C, at25C]: readonly [
  number,
  number,
  number,
  number,
  number,
]): HeatingValues => ({
  at0C,
  at15C,
  at60F,
  at20C,
  at25C,
});

export const GAS_COMPONENTS: ReadonlyMap<string, GasComponent> = new Map(
  ROWS.map(([name, molarMass, [carbon, hydrogen, oxygen, nitrogen], gross, net, summation15]) => [
    name,
    { molarMass, carbon, hydrogen, oxygen, nitrogen, gross: heats(gross), net: heats(net), summation15 },
  ]),
);
