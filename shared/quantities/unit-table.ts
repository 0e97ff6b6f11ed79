import type { Dimension, Unit } from './unit.ts';

const NONE: Dimension = [0, 0, 0, 0, 0, 0, 0];
const LENGTH: Dimension = [1, 0, 0, 0, 0, 0, 0];
const AREA: Dimension = [2, 0, 0, 0, 0, 0, 0];
const VOLUME: Dimension = [3, 0, 0, 0, 0, 0, 0];
const MASS: Dimension = [0, 1, 0, 0, 0, 0, 0];
const TIME: Dimension = [0, 0, 1, 0, 0, 0, 0];
const TEMPERATURE: Dimension = [0, 0, 0, 1, 0, 0, 0];
const AMOUNT: Dimension = [0, 0, 0, 0, 1, 0, 0];
const MONEY: Dimension = [0, 0, 0, 0, 0, 1, 0];
const PRESSURE: Dimension = [-1, 1, -2, 0, 0, 0, 0];
const ENERGY: Dimension = [2, 1, -2, 0, 0, 0, 0];
const CURRENT: Dimension = [0, 0, 0, 0, 0, 0, 1];
const POWER: Dimension = [2, 1, -3, 0, 0, 0, 0];

/** International table British thermal unit, as UCUM's [Btu_IT]; gas is billed in it. */
const BTU = 1055.05585262;
/** 39.37 in exactly as the foot is 0.3048 m; conventional water of 1000 kg/m3 and g = 9.80665 m/s2. */
const INCH_OF_WATER = 249.08891;

type Row = readonly [
  code: string,
  shown: string,
  dimension: Dimension,
  factor: number,
  names: readonly string[],
  offset?: number,
];

/** Every unit the project knows, with the names people and exports give it. Names are matched without regard to case. */
const ROWS: readonly Row[] = [
  ['1', '', NONE, 1, ['', 'ratio']],
  [
    '%',
    '%',
    NONE,
    1e-2,
    [
      'pct',
      'percent',
      'vol%',
      'vol.%',
      '%vol',
      'vol-%',
      'vol.-%',
      'vol %',
      'vol. %',
      '% vol',
      '% vol.',
      '%v/v',
      '% v/v',
    ],
  ],
  ['[ppm]', 'ppm', NONE, 1e-6, ['ppm', 'ppmv', 'ppmvd', 'vpm']],
  ['[ppb]', 'ppb', NONE, 1e-9, ['ppb']],
  ['Cel', '°C', TEMPERATURE, 1, ['c', '°c', 'ºc', 'degc', 'deg c', 'celsius'], 273.15],
  ['[degF]', '°F', TEMPERATURE, 5 / 9, ['f', '°f', 'ºf', 'degf', 'deg f', 'fahrenheit'], 459.67 * (5 / 9)],
  ['K', 'K', TEMPERATURE, 1, ['kelvin']],
  ['Pa', 'Pa', PRESSURE, 1, ['pascal']],
  ['hPa', 'hPa', PRESSURE, 100, []],
  ['kPa', 'kPa', PRESSURE, 1000, []],
  ['MPa', 'MPa', PRESSURE, 1e6, []],
  ['mbar', 'mbar', PRESSURE, 100, ['millibar']],
  ['bar', 'bar', PRESSURE, 1e5, []],
  [
    "[in_i'H2O]",
    'in. w.c.',
    PRESSURE,
    INCH_OF_WATER,
    [
      'inwc',
      'in. w.c.',
      'in w.c.',
      'in wc',
      'inh2o',
      'in. wg',
      'in wg',
      'inwg',
      'in. w.g.',
      'in w.g.',
      '"wg',
      '" wg',
      '"w.g.',
      '" w.g.',
      '"w.c.',
      '" w.c.',
      '"h2o',
      '" h2o',
      'in h2o',
      'in. h2o',
      '"wc',
      '" wc',
      '"h2o',
      'iwc',
      'inwg',
      'in wg',
      'in. w.g.',
    ],
  ],
  [
    'mm[H2O]',
    'mm w.c.',
    PRESSURE,
    9.80665,
    ['mmwc', 'mm wc', 'mm w.c.', 'mmh2o', 'mm h2o', 'mmwg', 'mm wg', 'mm w.g.', 'mmws', 'mm ws', 'mmca', 'mm ca'],
  ],
  ['[psi]', 'psi', PRESSURE, 6894.757293168361, ['psi', 'psig', 'lbf/in2']],
  ["[in_i'Hg]", 'in. Hg', PRESSURE, 133.322387415 * 25.4, ['inhg', 'in hg', 'in. hg']],
  ['mm[Hg]', 'mm Hg', PRESSURE, 133.322387415, ['mmhg', 'mm hg', 'torr']],
  ['atm', 'atm', PRESSURE, 101_325, []],
  ['J', 'J', ENERGY, 1, ['joule']],
  ['kJ', 'kJ', ENERGY, 1e3, []],
  ['MJ', 'MJ', ENERGY, 1e6, []],
  ['GJ', 'GJ', ENERGY, 1e9, []],
  ['W.h', 'Wh', ENERGY, 3600, ['wh']],
  ['kW.h', 'kWh', ENERGY, 3.6e6, ['kwh']],
  ['MW.h', 'MWh', ENERGY, 3.6e9, ['mwh']],
  ['[Btu_IT]', 'Btu', ENERGY, BTU, ['btu']],
  ['10*5.[Btu_IT]', 'therm', ENERGY, 1e5 * BTU, ['therm', 'therms', 'thm']],
  ['10*6.[Btu_IT]', 'MMBtu', ENERGY, 1e6 * BTU, ['mmbtu', 'dth', 'dekatherm']],
  ['W', 'W', POWER, 1, ['watt']],
  ['kW', 'kW', POWER, 1e3, []],
  ['MW', 'MW', POWER, 1e6, []],
  ['[Btu_IT]/h', 'Btu/h', POWER, BTU / 3600, ['btuh', 'btu/h', 'btu/hr', 'btuhr']],
  ['10*3.[Btu_IT]/h', 'MBH', POWER, (1e3 * BTU) / 3600, ['mbh', 'kbtuh', 'kbtu/h']],
  ['10*6.[Btu_IT]/h', 'MMBtu/h', POWER, (1e6 * BTU) / 3600, ['mmbtuh', 'mmbtu/h', 'mmbtu/hr']],
  ['[HP]', 'hp', POWER, 745.6998715822702, ['hp']],
  ['m', 'm', LENGTH, 1, ['metre', 'meter']],
  ['mm', 'mm', LENGTH, 1e-3, []],
  ['[ft_i]', 'ft', LENGTH, 0.3048, ['ft', 'feet', 'foot']],
  ['[in_i]', 'in', LENGTH, 0.0254, ['in', 'inch']],
  ['m2', 'm²', AREA, 1, ['m²', 'sqm']],
  ['m3', 'm³', VOLUME, 1, ['m³', 'cbm']],
  ['L', 'L', VOLUME, 1e-3, ['l', 'litre', 'liter']],
  ['[cft_i]', 'ft³', VOLUME, 0.028316846592, ['ft3', 'ft³', 'cf', 'scf']],
  ['10*2.[cft_i]', 'CCF', VOLUME, 2.8316846592, ['ccf']],
  ['10*3.[cft_i]', 'Mcf', VOLUME, 28.316846592, ['mcf']],
  ['[gal_us]', 'gal', VOLUME, 0.003785411784, ['gal', 'gallon', 'gallons']],
  ['kg', 'kg', MASS, 1, []],
  ['g', 'g', MASS, 1e-3, []],
  ['mg', 'mg', MASS, 1e-6, []],
  ['ng', 'ng', MASS, 1e-12, []],
  ['[lb_av]', 'lb', MASS, 0.45359237, ['lb', 'lbs']],
  ['s', 's', TIME, 1, ['sec', 'second', 'seconds']],
  ['min', 'min', TIME, 60, ['minute', 'minutes']],
  ['h', 'h', TIME, 3600, ['hr', 'hour', 'hours']],
  ['d', 'd', TIME, 86_400, ['day', 'days']],
  ['mo', 'months', TIME, 86_400 * 30.4375, ['month', 'months']],
  ['a', 'years', TIME, 86_400 * 365.25, ['year', 'years', 'yr']],
  ['mol', 'mol', AMOUNT, 1, []],
  ['kmol', 'kmol', AMOUNT, 1e3, []],
  ['A', 'A', CURRENT, 1, ['ampere']],
  ['mA', 'mA', CURRENT, 1e-3, []],
  ['uA', 'µA', CURRENT, 1e-6, ['µa', 'microampere']],
  ['{currency}', 'money', MONEY, 1, ['money', 'currency']],
];

export const UNITS: readonly Unit[] = ROWS.map(([code, shown, dimension, factor, , offset = 0]) => ({
  code,
  shown,
  dimension,
  factor,
  offset,
  point: offset !== 0,
}));

/** Lower-case name -> unit. Codes are added as written, since UCUM's tell upper from lower case. */
export const UNIT_NAMES: ReadonlyMap<string, Unit> = new Map(
  ROWS.flatMap(([code, , , , names], index) =>
    [code.toLowerCase(), ...names].map((name) => [name, UNITS[index]] as const),
  ).reverse(),
);

export const UNIT_CODES: ReadonlyMap<string, Unit> = new Map(UNITS.map((unit) => [unit.code, unit]));
