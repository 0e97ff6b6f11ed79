import { describe, expect, test } from 'vitest';
import type { Remark } from '../../../shared/cell.ts';
import type { CellState } from '../../../shared/cell-state.ts';
import { readCorrections } from '../../../shared/corrections/read-corrections.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { correctionsSchema } from '../../../shared/schemas/corrections.ts';
import { raisedSchema } from '../../../shared/schemas/raised.ts';
import { accountSchema, setAsideSchema } from '../../../shared/schemas/readings.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { type Schema, tableOf } from '../../../shared/table/schema.ts';
import type { Column, Table } from '../../../shared/table/table.ts';
import { renderReport } from '../../../src/report/render-report.ts';
import type { ReportCell, ReportInput } from '../../../src/report/report-input.ts';

const NASTY = '<script>alert(1)</script>"\'&';

function state(kind: string, given: Partial<CellState> = {}, remarks: readonly Remark[] = []): CellState {
  return {
    name: kind,
    kind,
    title: `Title of ${kind}`,
    parameters: {},
    sentence: ['Do it with ', { parameter: 'p', label: 'p', text: `choice of ${kind}`, entry: { kind: 'text' } }, '.'],
    details: [],
    reads: [],
    phase: 'done',
    progress: 1,
    description: { answer: `Answer of ${kind}.`, tables: [], figures: [], remarks },
    stale: false,
    message: '',
    question: undefined,
    waitsFor: [],
    rows: {},
    why: '',
    version: 1,
    ...given,
  };
}

function table(schema: Schema, columns: Readonly<Record<string, readonly (string | number)[]>>): Table {
  const given = new Map<string, Column>(
    Object.entries(columns).map(([name, values]) => [
      name,
      typeof values[0] === 'string' && schema.find((column) => column.name === name)?.kind === 'text'
        ? textColumn(values.map(String))
        : schema.find((column) => column.name === name)?.kind === 'date'
          ? { kind: 'date', values: Float64Array.from(values, (value) => readIsoDate(String(value))) }
          : numberColumn('1', Float64Array.from(values, Number)),
    ]),
  );
  return tableOf(schema, Object.values(columns)[0].length, given);
}

const raised = (units: readonly string[], tier = 'tolerance', reason = 'leaving_tolerance'): Table =>
  table(raisedSchema, {
    rank: units.map((_, i) => i + 1),
    unit: units,
    fuel: units.map(() => 'natural_gas'),
    fire: units.map(() => 'high'),
    reason: units.map(() => reason),
    tier: units.map(() => tier),
    probability: units.map(() => 0.83),
    by_date: units.map(() => '2027-06-01'),
    evidence: units.map((unit) => `Evidence of ${unit}.`),
    check_first: units.map(() => `Check ${NASTY}.`),
    readings_used: units.map(() => 8),
  });

const report = (cells: readonly ReportCell[], given: Partial<ReportInput> = {}): string =>
  renderReport({
    title: `Campus ${NASTY}`,
    asOf: readIsoDate('2026-06-01'),
    cells,
    lanes: [],
    workings: [],
    sources: { a: { short: 'Short A', full: 'Full A.', standing: 'memory' } },
    ...given,
  });

const READINGS: ReportCell = {
  state: state('readings'),
  tables: {
    account: table(accountSchema, { file: ['a.csv'], rows_read: [10], accepted: [8], set_aside: [1], duplicates: [1] }),
    'set-aside': table(setAsideSchema, {
      source_file: ['a.csv'],
      source_line: [4],
      reason: ['o2_pct: "5.x" is neither a number nor unknown'],
      original: [`B-07,${NASTY}`],
    }),
  },
};

describe('one file that prints, with no network and no script', () => {
  const html = report([READINGS, { state: state('raise'), tables: { raised: raised(['B-07']) } }]);

  test('nothing is fetched and nothing runs', () => {
    expect(html).not.toMatch(/<script|<link|<img|<iframe|@import|url\(|\son\w+=|javascript:/i);
    expect(html.match(/https?:\/\/[^"'\s<]*/g)?.every((url) => url === 'http://www.w3.org/2000/svg')).toBe(true);
    expect(html).toContain("default-src 'none'");
  });

  test('text from the data is escaped wherever it stands', () => {
    expect(html).not.toContain(NASTY);
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39;&amp;');
  });

  test('raised units with evidence, check first, chance; the account; methods; sources; cautions', () => {
    for (const part of [
      'Answer of raise.',
      'Leaving tolerance',
      'Evidence of B-07.',
      'chance 83 % by 2027-06-01',
      '10 readings proposed by the files: 8 accepted, 1 set aside, 1 duplicate.',
      'neither a number nor unknown',
      'Do it with <u>choice of readings</u>.',
      '<dt>Short A</dt><dd>Full A. <span class="quiet">(memory)</span>',
      'Only qualified (and, where required, licensed) people adjust burners',
      'A CO alarm, a smell of gas',
    ])
      expect(html).toContain(part);
  });

  test('no unknown number is printed', () => {
    expect(html.replaceAll(/<style>.*?<\/style>/gs, '')).not.toMatch(/NaN|Infinity|undefined|\[object/);
  });

  test('the same input gives the same bytes', () => {
    expect(report([READINGS, { state: state('raise'), tables: { raised: raised(['B-07']) } }])).toBe(html);
  });
});

test('defaults and remarks of every cell are printed', () => {
  const html = report([
    { state: state('drift', {}, [{ severity: 'note', text: '3 lanes have a default band.' }]), tables: {} },
  ]);
  expect(html).toContain('<li>3 lanes have a default band.</li>');
});

test('cells that failed, ask or wait are named at the top', () => {
  const html = report([
    {
      state: state('drift', { phase: 'failed', message: 'drift: no such column.', description: undefined }),
      tables: {},
    },
    { state: state('raise', { phase: 'waiting', waitsFor: ['drift'], description: undefined }), tables: {} },
    {
      state: state('readings', {
        phase: 'asking',
        question: { message: 'Which order?', remedy: 'Give --date-order.', parameter: 'p', options: [] },
      }),
      tables: {},
    },
  ]);
  expect(html).toContain('Cell drift failed: drift: no such column.');
  expect(html).toContain('Cell raise waits for drift.');
  expect(html).toContain('Cell readings asks: Which order? Give --date-order.');
  expect(html.indexOf('Cell drift failed')).toBeLessThan(html.indexOf('Cautions'));
});

test('nobody raised is said, and that it proves nothing', () => {
  expect(report([{ state: state('raise'), tables: { raised: raised([]) } }])).toContain(
    'No unit is raised. That is no proof that all is well',
  );
});

test('a huge fleet stays short: units beyond the drawn ones as lines, and those beyond the lines counted', () => {
  const units = Array.from({ length: 4000 }, (_, i) => `U-${i}`);
  const html = report([{ state: state('raise'), tables: { raised: raised(units) } }]);
  expect(html.split('<article').length - 1).toBe(200);
  expect(html.split('<tr>').length - 1).toBeLessThan(1600);
  expect(html).toContain('of 3800 further findings');
});

describe('corrections', () => {
  const row = { unit: 'B-07', taken_at: '2025-01-10', fire: 'high', state: 'as_found', fuel: '', nth: 1 };
  const made = { reason: NASTY, initials: 'KL', made_on: '2025-02-01' };
  const list = [
    { action: 'change', row, column: 'o2_pct', value: '5.1', ...made },
    { action: 'set_aside', row, ...made },
    { action: 'merge_units', from: 'B 7', to: 'B-07', ...made, lifted: true },
  ];

  test('are counted and listed with their reasons, initials and dates', () => {
    const read = readCorrections(list);
    const ids = read.status === 'value' ? read.value.map(({ id }) => id) : [];
    const fates = table(correctionsSchema, {
      id: ids,
      status: ['applied', 'lost', 'lifted'],
      before: ['51', '', ''],
      rows: [1, 0, 0],
    });
    const cell: ReportCell = {
      state: state('corrections', { parameters: { corrections: list } }),
      tables: { corrections: fates },
    };
    const html = renderReport({ title: 'T', asOf: 20_000, cells: [cell], lanes: [], workings: [], sources: {} });
    expect(html).toContain('3 corrections: 1 in effect, 1 lifted off, 1 that no longer finds its reading');
    expect(html).toContain('O2 of B-07, 2025-01-10, high fire, as found is 5.1 %');
    expect(html).toContain('All readings of B 7 belong to B-07');
    expect(html).toContain('KL');
    expect(html).not.toContain('<script>alert');
  });

  test('none are no section', () => {
    expect(renderReport({ title: 'T', asOf: 20_000, cells: [], lanes: [], workings: [], sources: {} })).not.toContain(
      'Corrections made by hand',
    );
  });
});
