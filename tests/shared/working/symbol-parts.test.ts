import { expect, test } from 'vitest';
import { symbolParts } from '../../../shared/working/symbol-parts.ts';

test.each([
  ['e = k × O2 / (O2,air − O2)', ['e = k × O2 / (', { symbol: 'O2', index: 'air' }, ' − O2)']],
  ['O2,20.9', [{ symbol: 'O2', index: '20.9' }]],
  ['CO,af,shown, x', [{ symbol: 'CO', index: 'af,shown' }, ', x']],
  ['otherwise(a, b)', ['otherwise(a, b)']],
  ['O2,wet→dry', [{ symbol: 'O2', index: 'wet→dry' }]],
  ['100 − 6.8636 %', ['100 − 6.8636 %']],
])('%s', (formula, parts) => {
  expect(symbolParts(formula)).toEqual(parts);
});
