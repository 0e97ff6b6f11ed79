import type { Source } from './source.ts';

export const COMBUSTION_SOURCES = {
  stoichiometry: {
    short: 'Stoichiometry',
    full: 'Complete combustion of the fuel’s composition in dry air with 20.95 % oxygen; any handbook of combustion.',
    standing: 'common practice',
  },
  definition: { short: 'Definition', full: 'By definition.', standing: 'common practice' },
  nasaGlenn: {
    short: 'NASA/TP-2002-211556',
    full: 'McBride, B. J.; Zehe, M. J.; Gordon, S.: NASA Glenn Coefficients for Calculating Thermodynamic Properties of Individual Species. NASA/TP-2002-211556, 2002.',
    standing: 'secondary',
  },
  if97: {
    short: 'IAPWS-IF97',
    full: 'IAPWS R7-97(2012): Revised Release on the IAPWS Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam, region 4.',
    standing: 'memory',
  },
  iso6976: {
    short: 'ISO 6976:2016',
    full: 'ISO 6976:2016, Natural gas. Calculation of calorific values, density, relative density and Wobbe indices from composition.',
    standing: 'secondary',
  },
  method3b: {
    short: 'EPA Method 3B',
    full: 'US EPA, 40 CFR 60 Appendix A, Method 3B: Gas analysis for the determination of emission rate correction factor or excess air.',
    standing: 'secondary',
  },
  method19: {
    short: 'EPA Method 19',
    full: 'US EPA, 40 CFR 60 Appendix A, Method 19: Determination of sulfur dioxide removal efficiency and particulate matter, sulfur dioxide, and nitrogen oxide emission rates.',
    standing: 'secondary',
  },
  airFreeCo: {
    short: 'Air-free CO, 20.9/(20.9 − O2)',
    full: 'Air-free carbon monoxide as technicians are taught it: CO × 20.9 / (20.9 − O2); trade school notes with worked examples.',
    standing: 'seen',
  },
  coCo2Ratio: {
    short: 'CO/CO2 ratio',
    full: 'Combustion performance ratio CO ppm / (CO2 % × 10 000), with 0.0040 as action limit at commissioning of condensing boilers; guidance of a heating industry body, 2013.',
    standing: 'seen',
  },
  indirectMethod: {
    short: 'Indirect method, losses on gross heat',
    full: 'Efficiency as 100 % less the flue losses in percent of gross heat with a datum of 25 °C; the method of boiler test codes.',
    standing: 'common practice',
  },
  fanLaw: {
    short: 'Fan at constant volume flow',
    full: 'A fan moves a constant volume, so at constant fuel the air ratio follows the density of the air (ideal gas); between equal pressures of air and gas it follows its square root.',
    standing: 'common practice',
  },
  jcgm100: {
    short: 'JCGM 100:2008',
    full: 'JCGM 100:2008, Evaluation of measurement data. Guide to the expression of uncertainty in measurement.',
    standing: 'memory',
  },
} as const satisfies Readonly<Record<string, Source>>;
