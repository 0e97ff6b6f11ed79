import { describe, expect, test } from 'vitest';
import { nearestName } from '../../../shared/names/nearest-name.ts';

describe('the name that was meant', () => {
  test.each([
    ['flue_temprature', ['flue_temperature', 'air_temperature'], 'flue_temperature'],
    ['natrual_gas', ['natural_gas', 'no2_oil'], 'natural_gas'],
    ['O2_PCT', ['co2_pct', 'o2_pct'], 'o2_pct'],
    ['lamda', ['lambda', 'max'], 'lambda'],
    ['zzz', ['lambda', 'max'], ''],
    ['', ['a'], ''],
    ['anything', [], ''],
  ])('%s of %j: %s', (written, names, expected) => {
    expect(nearestName(written, names)).toBe(expected);
  });
  test('a very long word costs little and finds nothing', () => {
    expect(nearestName('x'.repeat(100_000), ['lambda'])).toBe('');
  });
});
