import type { Source } from './source.ts';

/** Where the arithmetic of savings, the emission factors and the counterfactual come from. */
export const SAVINGS_SOURCES = {
  steamTip4: {
    short: 'DOE Steam Tip Sheet 4',
    full: 'US Department of Energy, Steam Tip Sheet 4: Improve your boiler’s combustion efficiency (January 2006): fuel saved = fuel used (1 - E1/E2).',
    standing: 'secondary',
  },
  part98: {
    short: '40 CFR 98 Tables C-1, C-2',
    full: '40 CFR Part 98, Mandatory greenhouse gas reporting, Table C-1 (81 FR 89188, 9 December 2016) and Table C-2 (78 FR 71952, 29 November 2013): kg CO2, CH4 and N2O per MMBtu, gross.',
    standing: 'secondary',
  },
  part98Gwp: {
    short: '40 CFR 98 Table A-1',
    full: '40 CFR Part 98, Table A-1, global warming potentials in force from 1 January 2025: CH4 28, N2O 265.',
    standing: 'memory',
  },
  carbonOfFuel: {
    short: 'Carbon of the fuel',
    full: 'Carbon dioxide by the carbon in the fuel’s composition per unit of gross heat, for fuels that Table C-1 does not list.',
    standing: 'common practice',
  },
  repeatability: {
    short: 'Same analyzer, same day',
    full: 'Found and left of one visit share the analyzer, so that its bias cancels; what remains is what repeated readings differ by, taken as 0.1 points of O2 and 1.2 K of flue temperature (common practice, no source).',
    standing: 'common practice',
  },
  ipmvpA: {
    short: 'IPMVP option A',
    full: 'International Performance Measurement and Verification Protocol, retrofit isolation with key parameter measurement: combustion efficiency measured before and after, fuel use estimated.',
    standing: 'memory',
  },
} as const satisfies Readonly<Record<string, Source>>;
