import { expect, test } from 'vitest';
import type { Blank, BlankEntry } from '../../../../shared/cell.ts';
import { readEntry } from '../../../../src/app/entry/read-entry.ts';
import { wordsOf } from '../../../../src/app/entry/words-of.ts';

const blank = (entry: BlankEntry): Blank => ({ parameter: 'horizonDays', text: '', entry });
const days = blank({ kind: 'number', unit: 'days', minimum: 1, maximum: 3653 });
const read = (typed: string, of = days) => readEntry(of, 'horizon days', typed);

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
    message: 'horizon days takes a number; "soon" is none. Type digits, with a point for decimals.',
  });
  expect(read('0x10').status).toBe('error');
  expect(read('Infinity').status).toBe('error');
  expect(read('1,234.5').status).toBe('error');
});

test('outside its range, the range is named', () => {
  expect(read('0')).toMatchObject({
    message: 'horizon days must be between 1 and 3653 days; found 0. Type another number.',
  });
  expect(read('-5', blank({ kind: 'number', unit: '', minimum: 0 }))).toMatchObject({
    message: 'horizon days must be at least 0; found -5. Type another number.',
  });
});

test('empty is null where it may be, else a number is asked for', () => {
  expect(read('', blank({ kind: 'number', unit: '', optional: true }))).toEqual({ status: 'value', value: null });
  expect(read(' ').status).toBe('error');
});

test("parameters' names are read as words", () => {
  expect(wordsOf('horizonDays')).toBe('horizon days');
  expect(wordsOf('low_fire_share')).toBe('low fire share');
});
