/** NOx and CO in other units, against published conversions. */
import { describe, expect, test } from 'vitest';
import { convert } from '../../shared/quantities/convert.ts';
import { relationsAt } from '../shared/combustion/relations-at.ts';

const nox = (ppm: number, o2: number, fuel = 'natural_gas') =>
  relationsAt(fuel, { inputs: { 'reading.nox_ppm': ppm, 'reading.o2_pct': o2 } });

describe('EPA Method 19: E = C 1.194e-7 Fd 20.9 / (20.9 - O2) (seen in 40 CFR 75 App. F and 30 TAC 117)', () => {
  test('ppm at 3 % O2 for 1 lb/MMBtu: gas 823.5, oil 780.5; CO on gas 1352.6 (computed from the factors seen)', () => {
    expect(1 / (nox(1, 3)('nox_lb_per_MMBtu').value || Number.NaN)).toBeCloseTo(823.5, 0);
    expect(1 / nox(1, 3, 'no2_oil')('nox_lb_per_MMBtu').value).toBeCloseTo(780.5, 0);
    const co = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': 1, 'reading.o2_pct': 3 } });
    expect(1 / co('co_lb_per_MMBtu').value).toBeCloseTo(1352.6, 0);
  });

  // Rule pairs of a Californian district: 30 ppm seen; the lb/MMBtu beside them from memory. They round to two digits.
  test.each([
    [30, 0.036],
    [9, 0.011],
    [5, 0.0062],
  ])('%s ppm at 3 %% O2 is %s lb/MMBtu', (ppm, pounds) => {
    expect(Math.abs(nox(ppm, 3)('nox_lb_per_MMBtu').value / pounds - 1)).toBeLessThan(0.03);
  });

  test('the dilution of the sample does not matter', () => {
    const thin = nox(40 * (17.9 / 20.9), 3)('nox_lb_per_MMBtu').value;
    expect(nox(40 * (13.9 / 20.9), 7)('nox_lb_per_MMBtu').value).toBeCloseTo(thin, 10);
  });

  test('AP-42 table 1.4 (NOx 100, 50, 32 lb per million scf from memory, CO 84 seen; 1020 Btu/scf): 80.7, 40.4, 25.8 and 111.4 ppm', () => {
    const perPpm = nox(1, 3)('nox_lb_per_MMBtu').value;
    expect(100 / 1020 / perPpm).toBeCloseTo(80.7, 0);
    expect(50 / 1020 / perPpm).toBeCloseTo(40.4, 0);
    expect(32 / 1020 / perPpm).toBeCloseTo(25.8, 0);
    const co = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': 1, 'reading.o2_pct': 3 } });
    expect(84 / 1020 / co('co_lb_per_MMBtu').value).toBeCloseTo(111.4, 0);
  });

  test('1 lb/MMBtu is 429.923 ng/J', () => {
    expect(convert(1, 'lb/MMBtu', 'ng/J')).toBeCloseTo(429.923, 3);
  });
});

describe('per cubic metre and per kilowatt-hour', () => {
  test('1 ppm NOx is 2.0525 mg/m3 at 0 °C (EN 483 and EN 676 print 2.054, from memory: another molar volume)', () => {
    expect(nox(1, 3)('nox_at_3pct_o2_mg_per_m3').value).toBeCloseTo(2.0525, 3);
    expect(Math.abs(nox(1, 3)('nox_at_3pct_o2_mg_per_m3').value / 2.054 - 1)).toBeLessThan(0.001);
  });
  test('1 ppm CO is 1.2497 mg/m3 at 0 °C, 1.145 at 25 °C (a public table, seen)', () => {
    const co = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': 1, 'reading.o2_pct': 3 } });
    const perM3 = co('co_at_3pct_o2_mg_per_m3').value;
    expect(perM3).toBeCloseTo(1.2497, 3);
    expect((perM3 * 273.15) / 298.15).toBeCloseTo(1.145, 3);
  });
  test('methane, 1 ppm NOx at 0 % O2: 1.764 mg/kWh net; at 3 %: 2.059 (EN 483 and EN 676, from memory)', () => {
    expect(nox(1, 0, 'methane')('nox_net_mg_per_kWh').value).toBeCloseTo(1.764, 2);
    expect(nox(1, 3, 'methane')('nox_net_mg_per_kWh').value).toBeCloseTo(2.059, 2);
  });
  test('methane, 1 ppm CO at 0 % O2: 1.074 mg/kWh net (computed from the same)', () => {
    const co = relationsAt('methane', { inputs: { 'reading.co_ppm': 1, 'reading.o2_pct': 0 } });
    expect(co('co_net_mg_per_kWh').value).toBeCloseTo(1.074, 3);
  });
});
