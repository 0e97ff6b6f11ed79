import { describe, expect, test } from 'vitest';
import { compute } from '../../../cells/corrections/compute.ts';
import { kind } from '../../../cells/corrections/kind.ts';
import { readParameters } from '../../../cells/corrections/parameters.ts';
import type { CellResult } from '../../../shared/cell.ts';
import { writeCsv } from '../../../shared/csv/write-csv.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { accountSchema, readingsSchema, setAsideSchema } from '../../../shared/schemas/readings.ts';
import { boundsOf, numberColumn, numbersOf, textAt, textColumn, textsOf } from '../../../shared/table/columns.ts';
import { tableOf } from '../../../shared/table/schema.ts';
import type { Column, Table } from '../../../shared/table/table.ts';

type Row = readonly [unit: string, takenAt: string, fire: string, state: string, o2: number];

/** Two units, two visits, and one printout that was typed in twice with different numbers. */
const ROWS: readonly Row[] = [
  ['B-07', '2024-03-01', 'high', 'as_found', 5],
  ['B-07', '2024-03-01', 'low', 'as_found', 6],
  ['B-07', '2025-03-01', 'high', 'unknown', 52],
  ['B-07', '2025-03-01', 'high', 'unknown', 5.1],
  ['B-09', '2024-03-01', 'high', 'as_found', 4],
  ['b 09', '2025-03-01', 'high', 'as_found', 4.2],
];

function importedOf(rows: readonly Row[]): CellResult {
  const accepted = tableOf(
    readingsSchema,
    rows.length,
    new Map<string, Column>([
      ['unit', textColumn(rows.map(([unit]) => unit))],
      ['taken_at', { kind: 'date', values: Float64Array.from(rows, ([, taken]) => readIsoDate(taken)) }],
      ['fire', textColumn(rows.map(([, , fire]) => fire))],
      ['state', textColumn(rows.map(([, , , state]) => state))],
      [
        'o2_pct',
        numberColumn(
          '%',
          Float64Array.from(rows, ([, , , , o2]) => o2),
        ),
      ],
      ['source_file', textColumn(rows.map(() => 'a.csv'))],
      [
        'source_line',
        numberColumn(
          '1',
          Float64Array.from(rows, (_, at) => at + 2),
        ),
      ],
    ]),
  );
  const account = tableOf(
    accountSchema,
    1,
    new Map<string, Column>([
      ['file', textColumn(['a.csv'])],
      ...['rows_read', 'accepted', 'set_aside', 'duplicates'].map((name): [string, Column] => [
        name,
        numberColumn('1', Float64Array.of(name === 'rows_read' || name === 'accepted' ? rows.length : 0)),
      ]),
    ]),
  );
  return { tables: { accepted, account, 'set-aside': tableOf(setAsideSchema, 0, new Map()) } };
}

const signed = { reason: 'Looked at the printout.', initials: 'KL', made_on: '2025-04-01' };
const key = (at: number, nth = 1, rows = ROWS) => {
  const [unit, taken_at, fire, state] = rows[at];
  return { unit, taken_at, fire, state, fuel: '', nth };
};

async function corrected(corrections: readonly object[], rows = ROWS) {
  const read = readParameters({ corrections });
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const outcome = await compute(read.value, new Map([['readings', importedOf(rows)]]));
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

const rowsOf = (table: Table): Row[] =>
  Array.from({ length: table.rows }, (_, row): Row => {
    const text = (name: string): string => textAt(textsOf(table, name), row);
    const day = new Date(numbersOf(table, 'taken_at')[row] * 86_400_000).toISOString().slice(0, 10);
    return [text('unit'), day, text('fire'), text('state'), numbersOf(table, 'o2_pct')[row]];
  });
const statuses = ({ tables }: CellResult): string[] =>
  Array.from({ length: tables.corrections.rows }, (_, row) => textAt(textsOf(tables.corrections, 'status'), row));

describe('a correction', () => {
  test('of a value changes that value of that row, and nothing of what was imported', async () => {
    const imported = importedOf(ROWS);
    const before = [...writeCsv(imported.tables.accepted)].join('');
    const read = readParameters({
      corrections: [{ action: 'change', row: key(2), column: 'o2_pct', value: '5.2', ...signed }],
    });
    if (read.status !== 'value') throw new Error('refused');
    const outcome = await compute(read.value, new Map([['readings', imported]]));
    if (outcome.status !== 'value') throw new Error('failed');
    expect(rowsOf(outcome.value.tables.accepted)).toEqual(ROWS.with(2, ['B-07', '2025-03-01', 'high', 'unknown', 5.2]));
    expect([...writeCsv(imported.tables.accepted)].join('')).toBe(before);
    expect(textAt(textsOf(outcome.value.tables.corrections, 'before'), 0)).toBe('52');
  });

  test('may be a bound', async () => {
    const { tables } = await corrected([
      { action: 'change', row: key(0), column: 'co_ppm', value: '>4000', ...signed },
    ]);
    expect([numbersOf(tables.accepted, 'co_ppm')[0], boundsOf(tables.accepted, 'co_ppm')[0]]).toEqual([4000, 1]);
  });

  test('names the state of one of two rows alike, which takes its place in the order', async () => {
    const { tables } = await corrected([
      { action: 'change', row: key(3, 2), column: 'state', value: 'as_found', ...signed },
    ]);
    expect(rowsOf(tables.accepted).slice(2, 4)).toEqual([
      ['B-07', '2025-03-01', 'high', 'as_found', 5.1],
      ['B-07', '2025-03-01', 'high', 'unknown', 52],
    ]);
  });

  test('sets a row aside with its reason, and the account still adds up', async () => {
    const { tables } = await corrected([{ action: 'set_aside', row: key(2), ...signed }]);
    expect(tables.accepted.rows).toBe(5);
    expect(textAt(textsOf(tables['set-aside'], 'reason'), 0)).toBe(
      'set aside by KL on 2025-04-01: Looked at the printout.',
    );
    expect(numbersOf(tables['set-aside'], 'source_line')[0]).toBe(4);
    const count = (name: string): number => numbersOf(tables.account, name)[0];
    expect([count('rows_read'), count('accepted'), count('set_aside'), count('duplicates')]).toEqual([6, 5, 1, 0]);
  });

  test('restores what an earlier one set aside', async () => {
    const result = await corrected([
      { action: 'set_aside', row: key(2), ...signed },
      { action: 'restore', row: key(2), ...signed, made_on: '2025-05-01' },
    ]);
    expect(rowsOf(result.tables.accepted)).toEqual(ROWS);
    expect(statuses(result)).toEqual(['overruled', 'applied']);
  });

  test('the latest of one value counts, whatever order they stand in', async () => {
    const early = { action: 'change', row: key(0), column: 'o2_pct', value: '1', ...signed };
    const late = { ...early, value: '2', made_on: '2025-06-01' };
    for (const list of [
      [early, late],
      [late, early],
    ])
      expect(rowsOf((await corrected(list)).tables.accepted)[0][4]).toBe(2);
  });

  test('of one day the one made later counts, on every day of a year', async () => {
    for (let day = 0; day < 365; day++) {
      const made_on = new Date(Date.UTC(2025, 0, 1 + day)).toISOString().slice(0, 10);
      const aside = { action: 'set_aside', row: key(2), ...signed, made_on };
      const back = { action: 'restore', row: key(2), ...signed, made_on };
      expect((await corrected([aside, back])).tables.accepted.rows).toBe(ROWS.length);
      expect((await corrected([back, aside])).tables.accepted.rows).toBe(ROWS.length - 1);
      const turns = [
        { ...aside, turn: 2 },
        { ...back, turn: 1 },
      ];
      expect((await corrected(turns)).tables.accepted.rows).toBe(ROWS.length - 1);
    }
  });

  test('merges two ids of a unit', async () => {
    const { tables } = await corrected([{ action: 'merge_units', from: 'b 09', to: 'B-09', ...signed }]);
    expect(rowsOf(tables.accepted).map(([unit]) => unit)).toEqual(['B-07', 'B-07', 'B-07', 'B-07', 'B-09', 'B-09']);
  });

  test('swaps two units at one visit and at no other', async () => {
    const { tables } = await corrected([
      { action: 'swap_units', units: ['B-07', 'B-09'], visited_on: '2024-03-01', ...signed },
    ]);
    expect(rowsOf(tables.accepted).filter(([, day]) => day === '2024-03-01')).toEqual([
      ['B-07', '2024-03-01', 'high', 'as_found', 4],
      ['B-09', '2024-03-01', 'high', 'as_found', 5],
      ['B-09', '2024-03-01', 'low', 'as_found', 6],
    ]);
    expect(rowsOf(tables.accepted).filter(([unit, day]) => unit === 'B-07' && day === '2025-03-01')).toHaveLength(2);
  });

  test('lifted off, everything is as imported, and it is still seen', async () => {
    const result = await corrected([{ action: 'set_aside', row: key(0), ...signed, lifted: true }]);
    expect(rowsOf(result.tables.accepted)).toEqual(ROWS);
    expect(statuses(result)).toEqual(['lifted']);
  });

  test('finds its row wherever the export puts it, and says so when the row is gone', async () => {
    const change = [{ action: 'change', row: key(0), column: 'o2_pct', value: '1', ...signed }];
    const moved = await corrected(change, [['A-01', '2020-01-01', 'high', 'as_left', 3], ...ROWS]);
    expect(rowsOf(moved.tables.accepted)[1][4]).toBe(1);
    const gone = await corrected(change, ROWS.slice(1));
    expect(statuses(gone)).toEqual(['lost']);
    expect(kind.describe(gone).remarks[0].text).toMatch(/B-07.*KL.*no longer finds/);
  });
});

describe('entries that are none are refused in one sentence', () => {
  test.each<[object, RegExp]>([
    [{ action: 'erase', ...signed }, /entry 1.*"erase"/],
    [{ action: 'set_aside', row: key(0), initials: 'KL', made_on: '2025-01-01' }, /reason/],
    [{ action: 'set_aside', row: key(0), ...signed, initials: ' ' }, /initials/],
    [{ action: 'set_aside', row: key(0), ...signed, made_on: '2025-02-30' }, /made_on/],
    [{ action: 'set_aside', row: key(0), ...signed, turn: 0 }, /turn/],
    [{ action: 'set_aside', row: {}, ...signed }, /row\.unit/],
    [{ action: 'change', row: key(0), column: 'source_line', value: '1', ...signed }, /source_line/],
    [{ action: 'change', row: key(0), column: 'o2_pct', value: 'five', ...signed }, /five/],
    [{ action: 'change', row: key(0), column: 'fire', value: 'hot', ...signed }, /hot/],
    [{ action: 'change', row: key(0), column: 'taken_at', value: '', ...signed }, /taken_at/],
    [{ action: 'swap_units', units: ['a', 'a'], visited_on: '2025-01-01', ...signed }, /units/],
    [{ action: 'merge_units', from: 'a', to: 'a', ...signed }, /to/],
  ])('%j', (entry, found) => {
    const read = readParameters({ corrections: [entry] });
    expect(read.status).toBe('error');
    expect(read.status === 'error' && read.message).toMatch(found);
  });
});
