import { describe, expect, test } from 'vitest';
import { fuelPhysics } from '../../sample-data/making/fuel-physics.ts';

// US Department of Energy, Steam Tip Sheet 4 (January 2006): natural gas, higher heating value; seen. Rows: O2, excess air,
// efficiency at 200, 400 and 600 °F of flue over combustion air. Round handbook figures come within a point of it.
const TIP_SHEET = [
  [2, 9.5, 85.4, 80.8, 76.0],
  [3, 15.0, 85.2, 80.4, 75.4],
  [5, 28.1, 84.7, 79.5, 74.0],
  [7, 44.9, 84.1, 78.2, 72.1],
  [10, 81.6, 82.8, 75.6, 68.2],
] as const;

describe('the small stoichiometry that the sample is made with', () => {
  const gas = fuelPhysics('natural_gas');

  test.each(TIP_SHEET)(
    'O2 %d %%: excess air within 0.6 and efficiencies within 1.0 of the tip sheet',
    (o2, air, ...rest) => {
      expect(Math.abs(100 * (gas.lambdaFromO2(o2) - 1) - air)).toBeLessThan(0.6);
      for (const [index, expected] of rest.entries()) {
        const flueC = 21 + [200, 400, 600][index] / 1.8;
        expect(Math.abs(gas.efficiencyGross(o2, flueC, 21) - expected)).toBeLessThan(1);
      }
    },
  );

  test('goes there and back', () => {
    expect(gas.o2FromLambda(gas.lambdaFromO2(4.2))).toBeCloseTo(4.2, 10);
    expect(gas.o2FromCo2(gas.co2FromO2(4.2))).toBeCloseTo(4.2, 10);
  });

  test('light oil has about 15.4 % CO2 at no excess air (common handbook figure, from memory)', () => {
    expect(fuelPhysics('no2_oil').co2FromO2(0)).toBeCloseTo(15.4, 1);
  });
});
