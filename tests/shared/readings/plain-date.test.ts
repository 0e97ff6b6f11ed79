import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DateReader } from '../../../shared/readings/read-date.ts';

const [DAY, YEAR] = [fc.integer({ min: 0, max: 33 }), fc.constantFrom('2024', '1999', '24', '0099', '1582', '20245')];
const padded = (n: number, two: boolean): string => (two ? String(n).padStart(2, '0') : String(n));
const clock = fc
  .tuple(
    fc.integer({ min: 0, max: 25 }),
    fc.integer({ min: 0, max: 61 }),
    fc.constantFrom('', ':07', ':5', ':60', ' pm'),
  )
  .map(([hour, minute, rest]) => `${hour}:${padded(minute, true)}${rest}`);
const mark = fc.constantFrom('.', '/', '-');
const written = fc
  .record({
    first: DAY,
    second: DAY,
    year: YEAR,
    two: fc.boolean(),
    one: mark,
    other: mark,
    at: clock,
    gap: fc.constantFrom('', ' ', 'T', '  '),
  })
  .map(({ first, second, year, two, one, other, at, gap }) => {
    const day = `${padded(first, two)}${one}${padded(second, two)}${other}${year}`;
    return gap === '' ? day : `${day}${gap}${at}`;
  });

test('dates in plain digits are what the patterns make of them', () => {
  fc.assert(
    fc.property(written, (text) => {
      const [plain, patterns] = [new DateReader(), new DateReader()];
      // A space in front is no part of a date, and too much for the quick reading.
      expect([plain.read(text), plain.monthFirstValue, plain.dayFirst, plain.monthFirst, plain.open]).toEqual([
        patterns.read(` ${text}`),
        patterns.monthFirstValue,
        patterns.dayFirst,
        patterns.monthFirst,
        patterns.open,
      ]);
    }),
    { numRuns: 3000 },
  );
});
