import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NumberReader, READ } from '../../../shared/readings/read-number.ts';

const read = (text: string, mark: '.' | ',' = '.', unit = '', kept = unit): [number, number, number] => {
  const reader = new NumberReader(mark, unit, kept);
  const value = reader.read(text);
  return [value, reader.bound, reader.status];
};

describe('numbers', () => {
  test.each([
    ['4.6', '.', 4.6],
    ['-0.02', '.', -0.02],
    ['+4.6', '.', 4.6],
    ['.5', '.', 0.5],
    ['5.', '.', 5],
    ['1e3', '.', 1000],
    ['−3', '.', -3],
    ['4,6', ',', 4.6],
    ['1.234,5', ',', 1234.5],
    ['1,234.5', '.', 1234.5],
    ["1'234", '.', 1234],
    ['1 234,5', ',', 1234.5],
    ['12\u00a0345', '.', 12345],
    ['1\u202f234', ',', 1234],
    [' 4.6 ', '.', 4.6],
    ['\u00a04,6\u00a0', ',', 4.6],
    ['4.60', '.', 4.6],
  ] as const)('%s with decimal %s', (text, mark, value) => expect(read(text, mark)).toEqual([value, 0, READ.number]));

  test('whatever a double prints comes back, and whole digits exactly', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(read(String(value))[0]).toBe(value + 0);
        expect(read(String(value).replace('.', ','), ',')[0]).toBe(value + 0);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: -9e8, max: 9e8 }), fc.integer({ min: 0, max: 6 }), (digits, decimals) => {
        const text = (digits / 10 ** decimals).toFixed(decimals);
        expect(read(text)[0]).toBe(Number(text));
      }),
    );
  });
});

describe('bounds and marks', () => {
  test.each([
    ['>4000', 4000, 1],
    ['4000+', 4000, 1],
    ['> 4000 ppm', 4000, 1],
    ['<5', 5, -1],
    ['≥4000', 4000, 1],
    ['>=4000', 4000, 1],
    ['>4,000', 4000, 1],
  ] as const)('%s is a bound', (text, value, bound) =>
    expect(read(text, '.', '[ppm]')).toEqual([value, bound, READ.number]),
  );

  test.each(['OVER', 'OFL', '****', 'over range', 'OR', '>>>>', 'Überlauf'])('%s is over range', (text) => {
    expect(read(text)[2]).toBe(READ.overRange);
  });

  test.each(['', '  ', '-', '----', '–', 'n/a', 'N/A', 'k.A.', 'null', '#N/A', '...'])('"%s" is unknown', (text) => {
    expect(read(text)).toEqual([Number.NaN, 0, READ.unknown]);
  });

  test.each([
    '5.x',
    '4,6',
    '3,,4',
    'abc',
    '1.2.3',
    '--5',
    '>',
    '12:30',
    '4.6 bananas',
    '1,23,456',
    '>5+',
    '0x10',
    'Infinity',
  ])('%s is no number', (text) => expect(read(text)[2]).toBe(READ.wrong));
});

describe('units', () => {
  test('in the cell, the same as the column or another of its kind', () => {
    expect(read('4.6 %', '.', '%')[0]).toBe(4.6);
    expect(read('62,3 °C', ',', 'Cel')[0]).toBe(62.3);
    // 212 °F is 100 °C (boiling water, by definition of the scales).
    expect(read('212 °F', '.', 'Cel')[0]).toBeCloseTo(100, 9);
    expect(read('20 mbar', '.', '%')[2]).toBe(READ.wrong);
  });

  test('of the column, turned into the one that is kept', () => {
    // 1 in. w.c. = 249.08891 Pa (conventional water; UCUM [in_i'H2O], GNU units; known: seen in the brief table of units).
    expect(read('1', '.', "[in_i'H2O]", 'Pa')[0]).toBeCloseTo(249.08891, 8);
    expect(read('20', '.', 'mbar', 'Pa')[0]).toBe(2000);
    expect(read('>4000', '.', '[ppm]', '[ppm]')).toEqual([4000, 1, READ.number]);
    // An air ratio of 1.25 is 25 % excess air, by definition.
    expect(read('1.25', '.', 'lambda', '%')[0]).toBeCloseTo(25, 12);
  });
});
