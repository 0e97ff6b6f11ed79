import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/readings/kind.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

const lines = (...text: string[]): string => `${text.join('\n')}\n`;
const told = (rows: readonly Readonly<Record<string, string>>[], ...columns: string[]): string[] =>
  rows.map((row) => columns.map((column) => row[column]).join(' '));

describe('a head line with other heads further down', () => {
  const TWO = lines(
    'Boiler,Date,Fire,State,O2 (%),Stack temp (°F)',
    'B-01,2024-03-13,high,as_found,4.6,212',
    'B-02,2024-03-13,high,as_found,5.6,230',
    '',
    'Anlage,Datum,Laststufe,Zustand,Abgastemperatur [°C],CO gemessen [ppm],O2 [%]',
    'B-03,13.03.2024,Volllast,vorher,110,12,3.9',
    'B-04,14.03.2024,Volllast,vorher,111,13,4.9',
  );

  test.each([17, 65_536])('maps the columns anew from there on, in pieces of %d bytes', async (piece) => {
    const result = await accepted([fileOf('a.csv', TWO, piece)]);
    expect(told(rowsOf(result.tables['accepted']), 'unit', 'o2_pct', 'flue_C', 'co_ppm', 'source_line')).toEqual([
      'B-01 4.6 100  2',
      'B-02 5.6 110  3',
      'B-03 3.9 110 12 6',
      'B-04 4.9 111 13 7',
    ]);
    expect(result.files[0]).toMatchObject({ rows_read: 4, accepted: 4, lines: { head: 2, blank: 1, reading: 4 } });
    expect(
      kind
        .describe(result)
        .remarks.map(({ text }) => text)
        .join('\n'),
    ).toContain('a.csv: line 5 is another head line');
  });

  test('a column added later, the first heads again after it', async () => {
    const { tables } = await accepted(
      lines(
        'unit,taken_at,fire,state,o2_pct',
        'B-01,2024-03-13,high,as_found,4.6',
        'unit,taken_at,fire,state,o2_pct,co_ppm',
        'B-02,2024-03-14,high,as_found,4.7,20',
        'unit,taken_at,fire,state,o2_pct',
        'B-03,2024-03-15,high,as_found,4.8',
      ),
    );
    expect(told(rowsOf(tables['accepted']), 'unit', 'o2_pct', 'co_ppm')).toEqual([
      'B-01 4.6 ',
      'B-02 4.7 20',
      'B-03 4.8 ',
    ]);
  });

  test('a unit told between the tables holds for those after it', async () => {
    const { tables } = await accepted(
      lines(
        'Unit: B-01',
        'Date,Time,Fire,O2 (%),CO2 (%)',
        '2024-03-13,10:15,high,4.6,9.1',
        'Unit: B-02',
        'Date,Time,Fire,CO2 (%),O2 (%)',
        '2024-03-13,10:25,high,8.3,6.0',
        'Unit: B-03',
        'Date,Time,Fire,O2 (%),CO2 (%)',
        '2024-03-13,10:45,high,5.1,8.9',
      ).replaceAll('Date,Time,Fire,CO2 (%),O2 (%)', 'Date,Time,Fire,CO2 (%),O2 (%)'),
    );
    expect(told(rowsOf(tables['accepted']), 'unit', 'o2_pct', 'co2_pct')).toEqual([
      'B-01 4.6 9.1',
      'B-02 6 8.3',
      'B-03 5.1 8.9',
    ]);
  });

  test('a table of something else is set aside, row by row, with the reason', async () => {
    const result = await accepted(
      lines(
        'unit,taken_at,fire,state,o2_pct',
        'B-01,2024-03-13,high,as_found,4.6',
        'Boiler,Technician,Comment,Fuel,Analyzer',
        'B-01,VW,cleaned,natural gas,An-1',
        'B-02,VW,,natural gas,An-1',
      ),
    );
    expect(result.files[0]).toMatchObject({ rows_read: 3, accepted: 1, set_aside: 2 });
    expect(rowsOf(result.tables['set-aside'])[0]).toMatchObject({
      source_line: '4',
      reason: 'it stands under another head line (line 3), which has no unit, no date or no measured value',
      original: 'B-01,VW,cleaned,natural gas,An-1',
    });
  });

  test('what the new heads leave open is asked, by file and line', async () => {
    const text = TWO.replace('Abgastemperatur [°C]', 'Abgastemperatur');
    expect(await readReadings([fileOf('a.csv', text)])).toMatchObject({
      status: 'question',
      question: {
        message: expect.stringMatching(/^a.csv, line 5: the column "Abgastemperatur" does not say its unit/),
      },
    });
    const profile = { name: 'a.csv, line 5', columns: { Abgastemperatur: { field: 'flue', unit: 'Cel' } } };
    const { tables } = await accepted([fileOf('a.csv', text)], { profiles: [profile] });
    expect(tables['accepted'].rows).toBe(4);
  });

  test('a date order that one part shows holds for all of the file', async () => {
    const { tables } = await accepted(
      lines(
        'Boiler,Date,Fire,O2 (%)',
        'B-01,3/4/2024,high,4.6',
        'Boiler,Date,Fire,O2 (%),CO2 (%)',
        'B-02,3/14/2024,high,4.7,9.1',
      ),
    );
    expect(told(rowsOf(tables['accepted']), 'taken_at')).toEqual(['2024-03-04', '2024-03-14']);
  });
});
