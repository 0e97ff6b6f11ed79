import type { Source } from './source.ts';

/** Where the limits, the way they are judged and the order of checks come from. */
export const SAFETY_SOURCES = {
  ansiZ21: {
    short: 'ANSI Z21 series',
    full: 'ANSI Z21 series of appliance standards, as the trade press quotes them: CO air-free not over 400 ppm for vented heating equipment, 200 ppm for unvented appliances, 800 ppm for unvented ovens. The standards themselves were not read.',
    standing: 'secondary',
  },
  fieldCo: {
    short: 'Field practice for flue CO',
    full: 'Field practice for flue CO: up to 100 ppm air-free and steady is acceptable in running; 400 ppm air-free and over, or rising at any level, means shut down until put right.',
    standing: 'common practice',
  },
  districtRule: {
    short: 'District rules, 400 ppm at 3 % O2',
    full: 'California air district rules for boilers and heaters: CO not over 400 ppm by volume, dry, corrected to 3 % O2 (467 ppm air-free).',
    standing: 'secondary',
  },
  ratio: {
    short: 'CO/CO2 ratio 0.0040',
    full: 'UK industry guidance for condensing boilers (2013) and BS 7967 practice: CO/CO2 not over 0.0040, with not more than 350 ppm CO at commissioning where the maker gives nothing else.',
    standing: 'secondary',
  },
  ratingPlate: {
    short: 'Rating plate',
    full: 'The rating plate and the maker’s instructions of the unit, as the register gives them: the supply between its minimum and maximum; above the maximum, shut and correct first.',
    standing: 'common practice',
  },
  supplyFirst: {
    short: 'Supply before air',
    full: 'Gas supply is put right before the air is adjusted: static proves lock-up and the maximum, running at high fire proves the supply; a drop moves O2 only near the appliance regulator’s minimum inlet.',
    standing: 'common practice',
  },
  jcgm106: {
    short: 'JCGM 106:2012',
    full: 'JCGM 106:2012, Evaluation of measurement data. The role of measurement uncertainty in conformity assessment. Sections 7 and 8: probability of conformity, guard bands.',
    standing: 'memory',
  },
  ilacG8: {
    short: 'ILAC-G8:09/2019',
    full: 'ILAC-G8:09/2019, Guidelines on decision rules and statements of conformity: the non-binary statement with a guard band (pass, conditional pass, conditional fail, fail).',
    standing: 'secondary',
  },
  benjaminiHochberg: {
    short: 'Benjamini and Hochberg 1995',
    full: 'Y. Benjamini, Y. Hochberg: Controlling the false discovery rate: a practical and powerful approach to multiple testing. Journal of the Royal Statistical Society B 57 (1995) 289-300.',
    standing: 'memory',
  },
  bayesianFdr: {
    short: 'Bayesian false discovery rate',
    full: 'M. A. Newton, A. Noueiry, D. Sarkar, P. Ahlquist: Detecting differential gene expression with a semiparametric hierarchical mixture method. Biostatistics 5 (2004) 155-176: the mean of one less the chance over the entries of a list.',
    standing: 'memory',
  },
  moderatedVariance: {
    short: 'Smyth 2004',
    full: 'G. K. Smyth: Linear models and empirical Bayes methods for assessing differential expression in microarray experiments. Statistical Applications in Genetics and Molecular Biology 3 (2004) article 3.',
    standing: 'memory',
  },
  callbackRate: {
    short: 'Callbacks, 4 to 6 % of visits',
    full: 'Callbacks within 30 days as trades report them of themselves: 4 to 6 % of visits, with a wide spread.',
    standing: 'common practice',
  },
  colorUniversal: {
    short: 'Okabe and Ito palette',
    full: 'M. Okabe, K. Ito: Color Universal Design. How to make figures and presentations that are friendly to colorblind people (2002, revised 2008).',
    standing: 'memory',
  },
} as const satisfies Readonly<Record<string, Source>>;
