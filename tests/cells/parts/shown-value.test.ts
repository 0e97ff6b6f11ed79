import { expect, test } from 'vitest';
import { plainWords, safeToPaste, shownValue, spacedNumber } from '../../../cells/parts/shown-value.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';

const column = (name: string, digits?: number) =>
  digits === undefined ? { column: name, title: name, unit: '' } : { column: name, title: name, unit: '', digits };

test('a bound keeps its mark, an unknown is empty and never 0', () => {
  const co = numberColumn('[ppm]', Float64Array.of(4000, 5, Number.NaN), Int8Array.of(1, -1, 0));
  expect([0, 1, 2].map((row) => shownValue(column('co_ppm', 0), co, row))).toEqual(['>4000', '<5', '']);
});

test('with digits given, every value ends with as many, so that the decimal marks stand in one line', () => {
  const o2 = numberColumn('%', Float64Array.of(4, 12.345, -0.004));
  expect([0, 1, 2].map((row) => shownValue(column('o2_pct', 2), o2, row))).toEqual(['4.00', '12.35', '0.00']);
});

test('without digits, what follows the decimal mark is filled up to one width', () => {
  const loose = numberColumn('1', Float64Array.of(1234, 12.5, 0.1234));
  const after = [0, 1, 2].map((row) => {
    const text = shownValue(column('x'), loose, row);
    return text.includes('.') ? text.length - text.indexOf('.') : 5;
  });
  expect(new Set(after).size).toBe(1);
});

test('thousands stand apart from five digits on', () => {
  expect(spacedNumber(1234, 0)).toBe('1234');
  expect(spacedNumber(1234567.5, 1)).toBe('1\u202f234\u202f567.5');
  expect(spacedNumber(-12.5, 1)).toBe('−12.5');
});

test("code words are read with spaces, the user's own text stays as written", () => {
  expect(shownValue(column('state'), textColumn(['as_found']), 0)).toBe('as found');
  expect(shownValue(column('unit'), textColumn(['boiler_1']), 0)).toBe('boiler_1');
  expect(plainWords('co2_pct')).toBe('CO2 %');
});

test('a date is shown without its T, unknown dates are empty', () => {
  const taken = { kind: 'date', values: Float64Array.of(0.5, Number.NaN) } as const;
  expect(shownValue(column('taken_at'), taken, 0)).toBe('1970-01-01 12:00');
  expect(shownValue(column('taken_at'), taken, 1)).toBe('');
});

test('what another program could run as a formula is made text before it leaves', () => {
  expect(safeToPaste('=1+1')).toBe("'=1+1");
  expect(safeToPaste('@cmd')).toBe("'@cmd");
  expect(safeToPaste('-12.5')).toBe('-12.5');
  expect(safeToPaste('two\nlines')).toBe('two lines');
});
