import { expect, test } from 'vitest';
import { benjaminiHochberg } from '../../shared/statistics/benjamini-hochberg.ts';
import r from './reference/statistics-r.json';

/** The 15 p values of Benjamini and Hochberg 1995, J. R. Statist. Soc. B 57, 289-300, section 4.1 (seen in reprints). */
const P_VALUES = [
  0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1,
];

test('Benjamini and Hochberg’s example: exactly four rejected at 0.05', () => {
  expect(benjaminiHochberg(P_VALUES).filter((rate) => rate <= 0.05)).toHaveLength(4);
});

test('adjusted p values as R’s p.adjust gives them', () => {
  benjaminiHochberg(P_VALUES).forEach((rate, i) => {
    expect(rate).toBeCloseTo(r.bh[i], 12);
  });
});
