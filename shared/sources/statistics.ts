import type { Source } from './source.ts';

export const STATISTICS_SOURCES = {
  reml: {
    short: 'Patterson and Thompson 1971',
    full: 'Patterson, H. D.; Thompson, R.: Recovery of inter-block information when block sizes are unequal. Biometrika 58 (1971) 545-554.',
    standing: 'memory',
  },
  stateSpace: {
    short: 'Durbin and Koopman 2012',
    full: 'Durbin, J.; Koopman, S. J.: Time Series Analysis by State Space Methods. 2nd ed., Oxford University Press, 2012.',
    standing: 'memory',
  },
  augmentedFilter: {
    short: 'de Jong 1991',
    full: 'de Jong, P.: The diffuse Kalman filter. Annals of Statistics 19 (1991) 1073-1083.',
    standing: 'memory',
  },
  smoother: {
    short: 'Rauch, Tung and Striebel 1965',
    full: 'Rauch, H. E.; Tung, F.; Striebel, C. T.: Maximum likelihood estimates of linear dynamic systems. AIAA Journal 3 (1965) 1445-1450.',
    standing: 'memory',
  },
  penalizedVariances: {
    short: 'Chung et al. 2013',
    full: 'Chung, Y.; Rabe-Hesketh, S.; Dorie, V.; Gelman, A.; Liu, J.: A nondegenerate penalized likelihood estimator for variance parameters in multilevel models. Psychometrika 78 (2013) 685-709.',
    standing: 'memory',
  },
  firstPassage: {
    short: 'Folks and Chhikara 1978; Whitmore 1986',
    full: 'Folks, J. L.; Chhikara, R. S.: The inverse Gaussian distribution and its statistical application. J. R. Statist. Soc. B 40 (1978) 263-289; Whitmore, G. A.: Normal-gamma mixtures of inverse Gaussian distributions. Scand. J. Statist. 13 (1986) 211-220 (the mean over a normal drift; re-derived here and checked numerically).',
    standing: 'memory',
  },
  falseDiscovery: {
    short: 'Benjamini and Hochberg 1995',
    full: 'Benjamini, Y.; Hochberg, Y.: Controlling the false discovery rate: a practical and powerful approach to multiple testing. J. R. Statist. Soc. B 57 (1995) 289-300.',
    standing: 'secondary',
  },
  calibrationIntervals: {
    short: 'NCSLI RP-1',
    full: 'NCSL International, Recommended Practice RP-1: Establishment and Adjustment of Calibration Intervals, 4th ed., 2010 (as-found data before adjustment are the evidence, as-left is a reset).',
    standing: 'memory',
  },
  strd: {
    short: 'NIST StRD',
    full: 'National Institute of Standards and Technology: Statistical Reference Datasets, linear regression.',
    standing: 'seen',
  },
  supplyDrop: {
    short: '1 in. w.c. of drop',
    full: 'Low-pressure gas service: running pressure at high fire not more than 1 in. w.c. below static, lock-up included; the drop grows with heat input to the power 1.85.',
    standing: 'common practice',
  },
} as const satisfies Readonly<Record<string, Source>>;
