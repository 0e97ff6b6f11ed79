import { expect, test } from 'vitest';
import type { Blank, BlankEntry } from '../../../../shared/cell.ts';
import { readEntry } from '../../../../src/app/entry/read-entry.ts';

const blank = (entry: BlankEntry): Blank => ({ parameter: 'horizonDays', label: 'days ahead', text: '', entry });
const days = blank({ kind: 'number', unit: 'days', minimum: 1, maximum: 3653 });
const read = (typed: string, of = days) => readEntry(of, typed);

test.each([
  ['365', 365],
  [' 1 095 ', 1095],
  ['12,5', 12.5],
  ['730 days', 730],
  ['1e3', 1000],
  ['.5e1', 5],
])('%s is %d', (typed, value) => {
  expect(read(typed)).toEqual({ status: 'value', value });
});

test('what is no number is said to be none, in one sentence that quotes it', () => {
  expect(read('soon')).toEqual({
    status: 'error',
    message: 'Days ahead takes a number; "soon" is none. Type digits, with a point for decimals.',
  });
  expect(read('0x10').status).toBe('error');
  expect(read('Infinity').status).toBe('error');
  expect(read('1,234.5').status).toBe('error');
});

test('outside its range, the range is named', () => {
  expect(read('0')).toMatchObject({
    message: 'Days ahead must be between 1 and 3653 days; found 0. Type another number.',
  });
  expect(read('-5', blank({ kind: 'number', unit: '', minimum: 0 }))).toMatchObject({
    message: 'Days ahead must be at least 0; found -5. Type another number.',
  });
});

test('empty is null where it may be, else a number is asked for', () => {
  expect(read('', blank({ kind: 'number', unit: '', optional: true }))).toEqual({ status: 'value', value: null });
  expect(read(' ').status).toBe('error');
});

test('a share is typed in per cent and kept as a share', () => {
  const share = blank({ kind: 'number', unit: '%', factor: 100, minimum: 0, maximum: 0.5 });
  expect(read('7 %', share)).toEqual({ status: 'value', value: 0.07 });
  expect(read('12,5', share)).toEqual({ status: 'value', value: 0.125 });
  expect(read('60', share)).toMatchObject({
    message: 'Days ahead must be between 0 and 50 %; found 60. Type another number.',
  });
});

test('a unit of several words may be typed with it', () => {
  expect(read('1.5 % O2', blank({ kind: 'number', unit: '% O2' }))).toEqual({ status: 'value', value: 1.5 });
});
