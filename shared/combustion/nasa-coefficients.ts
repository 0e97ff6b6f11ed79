/**
 * NASA Glenn nine-coefficient fits, 200 to 1000 K (source `nasaGlenn`): a1..a7 of cp/R and b1 of the enthalpy.
 *
 *     cp/R   = a1 T^-2 + a2 T^-1 + a3 + a4 T + a5 T^2 + a6 T^3 + a7 T^4
 *     H/(RT) = -a1 T^-2 + a2 ln(T)/T + a3 + a4 T/2 + a5 T^2/3 + a6 T^3/4 + a7 T^4/5 + b1/T
 */
export interface NasaFit {
  readonly a: readonly [number, number, number, number, number, number, number];
  readonly b1: number;
}

/** The fits' own gas constant, J/(mol K). With it H(298.15 K) is the enthalpy of formation exactly. */
export const NASA_GAS_CONSTANT = 8.31451;

export type Species = 'CO2' | 'H2O' | 'N2' | 'O2' | 'Ar' | 'CO' | 'CH4' | 'air';

/** `air` is dry: N2 78.084, O2 20.9476, Ar 0.9365, CO2 0.0319 mol %. */
export const NASA_FITS: Readonly<Record<Species, NasaFit>> = {
  CO2: {
    a: [4.94365054e4, -6.26411601e2, 5.30172524, 2.503813816e-3, -2.127308728e-7, -7.68998878e-10, 2.849677801e-13],
    b1: -4.52819846e4,
  },
  H2O: {
    a: [-3.94796083e4, 5.75573102e2, 9.31782653e-1, 7.22271286e-3, -7.34255737e-6, 4.95504349e-9, -1.336933246e-12],
    b1: -3.30397431e4,
  },
  N2: {
    a: [2.210371497e4, -3.81846182e2, 6.08273836, -8.53091441e-3, 1.384646189e-5, -9.62579362e-9, 2.519705809e-12],
    b1: 7.10846086e2,
  },
  O2: {
    a: [-3.42556342e4, 4.84700097e2, 1.119010961, 4.29388924e-3, -6.83630052e-7, -2.0233727e-9, 1.039040018e-12],
    b1: -3.39145487e3,
  },
  Ar: { a: [0, 0, 2.5, 0, 0, 0, 0], b1: -7.45375e2 },
  CO: {
    a: [1.489045326e4, -2.922285939e2, 5.72452717, -8.17623503e-3, 1.456903469e-5, -1.087746302e-8, 3.027941827e-12],
    b1: -1.303131878e4,
  },
  CH4: {
    a: [-1.766850998e5, 2.78618102e3, -1.20257785e1, 3.91761929e-2, -3.61905443e-5, 2.026853043e-8, -4.97670549e-12],
    b1: -2.33131436e4,
  },
  air: {
    a: [1.00995016e4, -1.96827561e2, 5.00915511, -5.76101373e-3, 1.06685993e-5, -7.94029797e-9, 2.18523191e-12],
    b1: -1.76796731e2,
  },
};
