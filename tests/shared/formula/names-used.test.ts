import { expect, test } from 'vitest';
import { namesUsed } from '../../../shared/formula/names-used.ts';
import { parseFormula } from '../../../shared/formula/parse-formula.ts';

const known = (name: string): boolean => !name.startsWith('no_');

test.each([
  ['a + b * 2', ['a', 'b']],
  ['otherwise(a, b)', ['a']],
  ['otherwise(no_a, b)', ['no_a', 'b']],
  ['otherwise(a * no_a, b)', ['a', 'no_a', 'b']],
  ['known(a) ? b : c', ['a', 'b']],
  ['known(no_a) ? b : c', ['no_a', 'c']],
  ['a < b ? c : d', ['a', 'b', 'c', 'd']],
  ['weighted(a, otherwise(b, c))', ['a', 'b']],
])('%s rests on %j', (formula, names) => {
  expect([...new Set(namesUsed(parseFormula(formula), known))]).toEqual(names);
});
