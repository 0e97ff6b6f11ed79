import type { Source } from './source.ts';

export const FUEL_SOURCES = {
  iso6976: {
    short: 'ISO 6976:2016',
    full: 'ISO 6976:2016, Natural gas. Calculation of calorific values, density, relative density and Wobbe indices from composition. Tables 2 and 3.',
    standing: 'secondary',
  },
  typicalNaturalGas: {
    short: 'Typical pipeline gas',
    full: 'Typical compositions of distributed natural gas, chosen so that CO2max falls between 11.8 and 11.9 % for the default; common practice, no single source. Replace by the supplier’s analysis where it is known.',
    standing: 'common practice',
  },
  typicalLpg: {
    short: 'Typical LPG',
    full: 'Typical composition of commercial propane; common practice, no single source.',
    standing: 'common practice',
  },
  ownAnalysis: {
    short: 'Analysis given in the notebook',
    full: 'The composition that the notebook itself gives.',
    standing: 'seen',
  },
  epaPart75: {
    short: '40 CFR 75, Appendix F, Table 1',
    full: 'US EPA, 40 CFR 75, Appendix F, Table 1: F-factors for various fuels; the same as Method 19, table 19-2. Emission factors of 40 CFR 98, tables C-1 and C-2.',
    standing: 'secondary',
  },
  distillateOil: {
    short: 'DIN 51603-1 heating oil, typical analysis',
    full: 'Typical ultimate analysis and heating value of light heating oil (C 86.5 %, H 13.3 %, gross 45.4 to 45.6 MJ/kg, CO2max 15.4 %), as handbooks give it for DIN 51603-1 fuel.',
    standing: 'memory',
  },
  residualOil: {
    short: 'Handbook analysis of No. 6 oil',
    full: 'Typical ultimate analysis of residual fuel oil No. 6 (C 87.26, H 10.49, S 0.84, N 0.28, O 0.64 % by mass), as chemical engineers’ handbooks give it.',
    standing: 'memory',
  },
} as const satisfies Readonly<Record<string, Source>>;
