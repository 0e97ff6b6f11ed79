import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { writeCsv } from '../../../shared/csv/write-csv.ts';
import { dayOf } from '../../../shared/quantities/dates.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';

const write = (columns: Parameters<typeof makeTable>[0]): string => [...writeCsv(makeTable(columns))].join('');

describe('CSV as RFC 4180 wants it', () => {
  test('section 2, rules 1, 2 and 3: header, CRLF after every record', () => {
    expect(write([['a', textColumn(['x', ''])]])).toBe('a\r\nx\r\n""\r\n');
    expect(write([])).toBe('\r\n');
  });

  test('rules 6 and 7: line breaks, quotes and commas are enclosed, quotes doubled', () => {
    const column = textColumn(['b\r\nbb', 'b"bb', 'a,b', ' a ']);
    expect(write([['x,y', column]])).toBe('"x,y"\r\n"b\r\nbb"\r\n"b""bb"\r\n"a,b"\r\n a \r\n');
  });

  test('a bound keeps its mark, an unknown is empty, a number has at most 12 digits', () => {
    const values = Float64Array.of(4000, 5, Number.NaN, 1 / 3, -0, Number.POSITIVE_INFINITY);
    const bounds = Int8Array.of(1, -1, 1, 0, 0, 0);
    expect(
      write([
        ['co_ppm', numberColumn('[ppm]', values, bounds)],
        ['n', textColumn(['', '', '', '', '', ''])],
      ]),
    ).toBe('co_ppm,n\r\n>4000,\r\n<5,\r\n,\r\n0.333333333333,\r\n0,\r\n,\r\n');
  });

  test('dates are ISO 8601, with the time of day only where there is one', () => {
    const values = Float64Array.of(dayOf(2024, 2, 29), dayOf(2024, 2, 29, 13, 5), Number.NaN);
    expect(
      write([
        ['on', { kind: 'date', values }],
        ['n', textColumn(['1', '2', '3'])],
      ]),
    ).toBe('on,n\r\n2024-02-29,1\r\n2024-02-29T13:05,2\r\n,3\r\n');
  });

  test('any texts come back through a parser that is not ours', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.string(), fc.string({ unit: 'binary' })), { minLength: 1 }), (rows) => {
        const text = write([
          ['a', textColumn(rows.map(([a]) => a))],
          ['b', textColumn(rows.map(([, b]) => b))],
        ]);
        const { data } = Papa.parse<string[]>(text, { delimiter: ',', newline: '\r\n' });
        expect(data.slice(1, -1)).toEqual(rows.map(([a, b]) => [a, b]));
      }),
    );
  });
});
