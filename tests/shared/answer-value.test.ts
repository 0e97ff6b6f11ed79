import { expect, test } from 'vitest';
import { answerValue, answerWith } from '../../shared/answer-value.ts';

test('a plain answer is the parameter', () => {
  expect(answerValue('', 'dmy', undefined)).toBe('dmy');
});

test('a named entry takes the place of the one of its name, else it stands in front', () => {
  const north = { name: 'north.csv', decimal: ',' };
  const south = { name: 'south.csv' };
  expect(answerValue([south], '', north)).toEqual([north, south]);
  expect(answerValue([south, { name: 'north.csv' }], '', north)).toEqual([south, north]);
  expect(answerValue(undefined, '', north)).toEqual([north]);
});

test('a typed word goes where its path leads, and nowhere else', () => {
  const entry = { answer: { name: 'north.csv', constants: { fuel: 'propane' } }, path: ['constants', 'unit'] };
  expect(answerWith(entry, 'B-07')).toEqual({ name: 'north.csv', constants: { fuel: 'propane', unit: 'B-07' } });
  expect(entry.answer.constants).toEqual({ fuel: 'propane' });
  expect(answerWith({ answer: { name: 'n' }, path: ['__proto__', 'x'] }, 'y')).toEqual(
    JSON.parse('{"name":"n","__proto__":{"x":"y"}}'),
  );
  expect(({} as Record<string, unknown>)['x']).toBeUndefined();
});
