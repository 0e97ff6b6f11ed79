/**
 * Enthalpies of combustion gases against JANAF Thermochemical Tables, 4th edition (1998): H(T) - H(298.15 K) in kJ/mol.
 * The JANAF figures are from memory; they agree with the NASA fits to the 0.005 that both print, CH4 and Ar not given.
 * Formation enthalpies and heat capacities are those of the NASA file (thermo.inp of 2004), seen in a copy.
 */
import { describe, expect, test } from 'vitest';
import { enthalpyRise, heatCapacity } from '../../shared/combustion/enthalpy.ts';
import { NASA_FITS, NASA_GAS_CONSTANT, type Species } from '../../shared/combustion/nasa-coefficients.ts';

const JANAF: readonly (readonly [number, Readonly<Record<'CO2' | 'H2O' | 'N2' | 'O2' | 'CO', number>>])[] = [
  [300, { CO2: 0.069, H2O: 0.062, N2: 0.054, O2: 0.054, CO: 0.054 }],
  [400, { CO2: 4.003, H2O: 3.452, N2: 2.971, O2: 3.025, CO: 2.976 }],
  [500, { CO2: 8.305, H2O: 6.925, N2: 5.911, O2: 6.084, CO: 5.931 }],
  [600, { CO2: 12.907, H2O: 10.501, N2: 8.894, O2: 9.244, CO: 8.942 }],
  [700, { CO2: 17.754, H2O: 14.192, N2: 11.937, O2: 12.499, CO: 12.023 }],
  [800, { CO2: 22.806, H2O: 18.002, N2: 15.046, O2: 15.835, CO: 15.177 }],
  [1000, { CO2: 33.397, H2O: 26.0, N2: 21.463, O2: 22.703, CO: 21.69 }],
];

describe('JANAF, 4th edition (from memory), within its rounding and the fits’ 0.005 kJ/mol', () => {
  test.each(JANAF)('%s K', (kelvin, row) => {
    for (const [species, expected] of Object.entries(row))
      expect(Math.abs(enthalpyRise(species as Species, kelvin) / 1000 - expected), species).toBeLessThan(0.0055);
  });
});

describe('the NASA file itself', () => {
  const FORMATION: Readonly<Record<Species, number>> = {
    CO2: -393_510,
    H2O: -241_826,
    N2: 0,
    O2: 0,
    Ar: 0,
    CO: -110_535.196,
    CH4: -74_600,
    air: -125.53,
  };
  test.each(Object.entries(FORMATION))(
    '%s: H(298.15 K) is its enthalpy of formation, %s J/mol',
    (species, expected) => {
      const { a, b1 } = NASA_FITS[species as Species];
      const t = 298.15;
      const h =
        NASA_GAS_CONSTANT *
        t *
        (-a[0] / t ** 2 +
          (a[1] * Math.log(t)) / t +
          a[2] +
          (a[3] * t) / 2 +
          (a[4] * t ** 2) / 3 +
          (a[5] * t ** 3) / 4 +
          (a[6] * t ** 4) / 5 +
          b1 / t);
      // The file prints its formation enthalpies to a thousandth of a joule, its coefficients to ten digits.
      expect(Math.abs(h - expected)).toBeLessThan(0.02);
    },
  );

  test.each([
    ['CO2', 37.135],
    ['H2O', 33.588],
    ['N2', 29.124],
    ['O2', 29.378],
    ['CO', 29.141],
    ['Ar', 20.786],
    ['CH4', 35.691],
    ['air', 29.102],
  ] as const)('%s: heat capacity at 25 °C %s J/(mol K)', (species, expected) => {
    expect(heatCapacity(species, 298.15)).toBeCloseTo(expected, 3);
  });
});

test('GRI-Mech 3.0 seven-coefficient fits, seen, evaluated here beside them: within 0.012 kJ/mol', () => {
  const GRI: Readonly<Record<'CO2' | 'H2O' | 'N2' | 'O2' | 'CO', readonly number[]>> = {
    O2: [3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12],
    H2O: [4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12],
    CO: [3.57953347, -6.1035368e-4, 1.01681433e-6, 9.07005884e-10, -9.04424499e-13],
    CO2: [2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13],
    N2: [3.298677, 1.408204e-3, -3.963222e-6, 5.641515e-9, -2.444854e-12],
  };
  for (const [species, c] of Object.entries(GRI)) {
    const h = (t: number): number =>
      8.31446 * c.reduce((sum, coefficient, i) => sum + (coefficient * t ** (i + 1)) / (i + 1), 0);
    for (const t of [350, 400, 500, 600, 800])
      expect(Math.abs(enthalpyRise(species as Species, t) - (h(t) - h(298.15))), `${species} ${t}`).toBeLessThan(12);
  }
});

test('JANAF, CO2 at 298.15 K: Cp 37.129 J/(mol K) (row seen); the NASA fit, which we follow, has 37.135', () => {
  expect(Math.abs(heatCapacity('CO2', 298.15) - 37.129)).toBeLessThan(0.01);
});

test('latent heat at 25 °C: ISO 6976 44.013 kJ/mol or 2443.1 kJ/kg, which we follow; steam tables 2441.7 (from memory, real gas)', () => {
  expect((44.013 / 18.01528) * 1000).toBeCloseTo(2443.1, 1);
  expect(Math.abs(44.013 / 18.01528 / 2.4417 - 1)).toBeLessThan(0.001);
  // CODATA formation enthalpies, -285.830 and -241.826 kJ/mol, give 44.004.
  expect(Math.abs(44.013 - (285.83 - 241.826))).toBeLessThan(0.01);
});
