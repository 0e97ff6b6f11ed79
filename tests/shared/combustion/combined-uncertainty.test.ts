import { describe, expect, test } from 'vitest';
import { type CombinedTerm, combinedSd } from '../../../shared/combustion/combined-uncertainty.ts';
import { deriveReadings } from '../../cells/derive/derive-readings.ts';

const term = (weight: number, analyzer: string, input = 'reading.o2_pct', unit = 'A-1'): CombinedTerm => ({
  weight,
  analyzer,
  fuel: 'natural_gas',
  unit,
  budget: [{ input, value: 5, sd: 0.2, slope: 1, contribution: 0.2 }],
});

describe('JCGM 100, 5.2: correlated contributions are added before they are squared', () => {
  test('a difference of two readings by one analyzer keeps only what is not calibration', () => {
    expect(combinedSd([term(1, 'An-1'), term(-1, 'An-1')], 0.6)).toBeCloseTo(0.2 * Math.sqrt(2 * 0.4), 12);
    expect(combinedSd([term(1, 'An-1'), term(-1, 'An-1')], 1)).toBeCloseTo(0, 12);
  });
  test('by two analyzers it has both whole', () => {
    expect(combinedSd([term(1, 'An-1'), term(-1, 'An-2')], 0.6)).toBeCloseTo(0.2 * Math.SQRT2, 12);
  });
  test('analyzers without a name are taken as two', () => {
    expect(combinedSd([term(1, ''), term(-1, '')], 0.6)).toBeCloseTo(0.2 * Math.SQRT2, 12);
  });
  test('a mean over a fleet read by one analyzer never gets better than its calibration', () => {
    const fleet = Array.from({ length: 10_000 }, (_, i) => term(1e-4, 'An-1', 'reading.o2_pct', `U-${i}`));
    expect(combinedSd(fleet, 0.6)).toBeCloseTo(0.2 * Math.sqrt(0.6), 3);
  });
  test('what a fuel brings in is one error for all that burn it', () => {
    const both = [term(1, 'An-1', 'fuel.co2_max'), term(-1, 'An-2', 'fuel.co2_max')];
    expect(combinedSd(both)).toBeCloseTo(0, 12);
  });
  test('the pressure of two days is two', () => {
    expect(combinedSd([term(1, 'An-1', 'pressure_Pa'), term(-1, 'An-1', 'pressure_Pa')])).toBeCloseTo(
      0.2 * Math.SQRT2,
      12,
    );
  });
});

test('found and left by one instrument: the gain is better known than either efficiency', async () => {
  const result = await deriveReadings([
    { o2_pct: 8, flue_C: 180, air_C: 20, state: 'as_found' },
    { o2_pct: 5, flue_C: 175, air_C: 20, state: 'as_left' },
  ]);
  const budgets = [0, 1].map((row) => {
    const found = result.working('efficiency_gross_pct', row);
    if (found.status !== 'value') throw new Error('working');
    return found.value.budget;
  });
  const at = (weight: number, row: number, analyzer: string): CombinedTerm => ({
    weight,
    analyzer,
    budget: budgets[row],
    fuel: 'natural_gas',
    unit: 'A-1',
  });
  const one = combinedSd([at(1, 1, 'An-1'), at(-1, 0, 'An-1')]);
  const two = combinedSd([at(1, 1, 'An-1'), at(-1, 0, 'An-2')]);
  expect(one).toBeLessThan(0.75 * two);
});
