import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Dialect } from '../../../shared/csv/dialect.ts';
import { fixedColumns } from '../../../shared/csv/fixed-columns.ts';
import { fieldsOf, recordsOf } from './records-of.ts';

const dialect = (delimiter: Dialect['delimiter'], newline: '\n' | '\r' = '\n'): Dialect => ({
  delimiter,
  newline,
  starts: [],
});

// https://www.rfc-editor.org/rfc/rfc4180, section 2; the examples are the RFC's (known: memory).
describe('RFC 4180, section 2', () => {
  test.each([
    [
      '1: each record on a line of its own',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2: the last record may have no line break',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['4: spaces are part of a field', ' aaa ,bbb\r\n', [[' aaa ', 'bbb']]],
    [
      '5: fields may be enclosed in quotes',
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '6: line breaks, quotes and commas inside quotes',
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['7: a quote inside quotes is doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('rule %s', (_, text, expected) => {
    for (const piece of [1, 2, 3, 7, 100]) expect(fieldsOf(recordsOf(text, undefined, piece))).toEqual(expected);
  });
});

describe('line numbers are physical', () => {
  test('a record after a field with line breaks', () => {
    const records = recordsOf('h\r\n"a\nb\nc"\r\nd\r\n');
    expect(records.map(({ line }) => line)).toEqual([1, 2, 5]);
  });

  test('blank lines count, and come as one empty field', () => {
    expect(recordsOf('a,b\n\nc,d\n').map(({ line, fields }) => [line, fields.length])).toEqual([
      [1, 2],
      [2, 1],
      [3, 2],
    ]);
  });

  test('CR alone', () => {
    expect(fieldsOf(recordsOf('a,b\rc,d\r', dialect(',', '\r')))).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
  });
});

describe('a quote that is never closed costs its own line and no other', () => {
  test.each([
    ['to the end of the file', 'u,n\n1,"open\n2,b\n3,c\n4,d\n'],
    ['to a quote in a later line', 'u,n\n1,"open\n2,b\n3,"c"\n4,d\n'],
    ['at the beginning of a line', 'u,n\n"1,open\n2,b\n3,c\n4,d\n'],
  ])('%s', (_, text) => {
    for (const piece of [5, 8, 1000]) {
      const records = recordsOf(text, undefined, piece);
      expect(records.filter(({ fault }) => fault !== '').map(({ line }) => line)).toEqual([2]);
      expect(records.filter(({ fault }) => fault === '').map(({ line }) => line)).toEqual([1, 3, 4, 5]);
    }
  });

  test('inch marks inside a field are text', () => {
    expect(fieldsOf(recordsOf('a,7" w.c.,b\nc,"5"" pipe",d\n'))).toEqual([
      ['a', '7" w.c.', 'b'],
      ['c', '5" pipe', 'd'],
    ]);
  });

  test('more than a megabyte is never taken for one record', () => {
    const rows = Array.from({ length: 120_000 }, (_, i) => `${i},x,y,z`);
    const text = `h,a,b,c\n1,"open,b,c\n${rows.join('\n')}\n`;
    const records = recordsOf(text, undefined, 1 << 18);
    expect(records).toHaveLength(120_002);
    expect(records.filter(({ fault }) => fault !== '').map(({ line }) => line)).toEqual([2]);
  });

  test('a line longer than any row is given up, the next one is read', () => {
    const records = recordsOf(`a,b\n${'x'.repeat(3 << 20)}\nc,d\n`, undefined, 1 << 18);
    expect(records.map(({ line, fault }) => [line, fault])).toEqual([
      [1, ''],
      [2, 'long line'],
      [3, ''],
    ]);
  });
});

describe('fixed columns', () => {
  const text = 'Unit    O2    Note\nB-01    4.6   as usual\nB-02          new gasket\n';
  test('are cut where all lines are blank', () => {
    const starts = fixedColumns(text, '\n');
    expect(starts).toEqual([0, 8, 14]);
    expect(fieldsOf(recordsOf(text, { delimiter: 'columns', newline: '\n', starts }, 11))).toEqual([
      ['Unit', 'O2', 'Note'],
      ['B-01', '4.6', 'as usual'],
      ['B-02', '', 'new gasket'],
    ]);
  });
});

test('any table comes back from any pieces, with its lines', () => {
  const field = fc.string({ unit: fc.constantFrom('a', 'é', '1', ' ', ',', ';', '"', '\n', '\r\n', '.') });
  const table = fc.array(fc.array(field, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(table, fc.integer({ min: 1, max: 40 }), fc.constantFrom('\n', '\r\n'), (rows, piece, end) => {
      // Fields that hold whole rows are the one thing taken for an open quote; see the cases above.
      fc.pre(rows.every((row) => row.every((cell) => !/\n.*[,].*[,]/.test(cell))));
      const quote = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
      const text = rows.map((row) => row.map(quote).join(',') + end).join('');
      const records = recordsOf(text, undefined, piece);
      expect(fieldsOf(records)).toEqual(rows);
      let line = 1;
      for (const [i, row] of rows.entries()) {
        expect(records[i].line).toBe(line);
        line += 1 + row.join('').split('\n').length - 1;
      }
    }),
    { numRuns: 150 },
  );
});
