import { describe, expect, test } from 'vitest';
import { fileShapes, leastSure, unitChoices, unreadHeads } from '../../../cells/parts/file-shapes.ts';
import { READING_FIELDS } from '../../../shared/readings/fields.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

const HEAD = 'Boiler,Visited,Fire,State,Content of O2,Stack (°F),CO air free (ppm),Paint';
const ROW = 'B-01,2024-03-13,high,as found,4.6,312,28,blue';

/** The answer of a question whose label begins so, as the page puts it into the profiles. */
async function answered(text: string, label: string): Promise<readonly unknown[]> {
  const outcome = await readReadings([fileOf('export.csv', text)]);
  if (outcome.status !== 'question') throw new Error(JSON.stringify(outcome));
  const option = outcome.question.options.find((one) => one.label.startsWith(label));
  if (!option?.answer) throw new Error(`no answer ${label} among ${outcome.question.options.map((one) => one.label)}`);
  return [option.answer];
}

describe('a file without a column that it needs', () => {
  test('is asked which one it is, and only those that could be', async () => {
    const outcome = await readReadings([fileOf('export.csv', `${HEAD}\n${ROW}\n`)]);
    expect(outcome).toMatchObject({ status: 'question', question: { parameter: 'profiles' } });
    if (outcome.status !== 'question') return;
    // "Paint" has no date below it, whatever it is.
    expect(outcome.question.options.map(({ label }) => label)).toEqual(['"Visited", such as 2024-03-13']);
    expect(outcome.question.message).toContain('no column that is known to be the date');
    expect(outcome.question.byCommand).toContain('{"columns":{"Visited":{"field":"taken_at"}}}');
  });

  test('is read once that is answered', async () => {
    const profiles = await answered(`${HEAD}\n${ROW}\n`, '"Visited"');
    const { tables } = await accepted([fileOf('export.csv', `${HEAD}\n${ROW}\n`)], { profiles });
    expect(rowsOf(tables['accepted'])[0]).toMatchObject({ unit: 'B-01', taken_at: '2024-03-13', o2_pct: '4.6' });
  });

  test('of two columns under one head either can be it', async () => {
    const text = 'Boiler,O2 (%),Visited,Visited\nB-01,4.6,2024-03-13,2024-05-01\n';
    const profiles = await answered(text, '"Visited (2)"');
    const { tables } = await accepted([fileOf('export.csv', text)], { profiles });
    expect(rowsOf(tables['accepted'])[0]).toMatchObject({ unit: 'B-01', taken_at: '2024-05-01' });
  });

  test('the unit is one of the columns or a word for all rows', async () => {
    const text = 'Where,Date,O2 (%)\nEast 1,2024-03-13,4.6\n';
    const profiles = await answered(text, '"Where"');
    const { tables } = await accepted([fileOf('export.csv', text)], { profiles });
    expect(rowsOf(tables['accepted'])[0]).toMatchObject({ unit: 'East 1', o2_pct: '4.6' });
  });
});

describe('what the columns are', () => {
  const text = `${HEAD.replace('Visited', 'Date')}\n${ROW}\n`;
  const read = async (files = [fileOf('a.csv', text)], options: Record<string, unknown> = {}) =>
    (await accepted(files, options)).tables['columns'];

  test('a row a column: head and first value as written, what it is taken for, how sure, why', async () => {
    const rows = rowsOf(await read());
    expect(rows.map((row) => row['taken_for'])).toEqual([
      'unit',
      'taken_at',
      'fire',
      'state',
      'o2_pct',
      'flue',
      'co_air_free_ppm',
      '',
    ]);
    expect(rows[5]).toMatchObject({ head: 'Stack (°F)', first_value: '312', unit_shown: '°F', source_file: 'a.csv' });
    expect(rows[7]).toMatchObject({ sure_pct: '', reason: 'head not understood' });
    expect(Number(rows[4]['sure_pct'])).toBeLessThan(80);
  });

  test('files with the same heads are one shape; what is doubtful or not read is named', async () => {
    const shapes = fileShapes(await read([fileOf('a.csv', text), fileOf('b.csv', text.replace('2024', '2025'))]));
    expect(shapes).toHaveLength(1);
    expect(shapes[0]).toMatchObject({ file: 'a.csv', more: 1, profile: '' });
    expect(leastSure(shapes[0])?.head).toBe('Content of O2');
    expect(unreadHeads(shapes[0])).toEqual(['Paint']);
  });

  test('a head that stands there twice is two columns', async () => {
    const twice = fileShapes(await read([fileOf('a.csv', text.replace('Paint', 'State'))]))[0];
    expect(twice.columns.map(({ key }) => key).filter((key) => key.startsWith('State'))).toEqual([
      'State',
      'State (2)',
    ]);
  });

  test('each field offers the units it can be given in', () => {
    const choices = (name: string, now: string): string[] =>
      unitChoices(
        READING_FIELDS.find((field) => field.name === name),
        now,
      ).map(({ label }) => label);
    expect(choices('flue', 'Cel')).toEqual(['°C', '°F']);
    expect(choices('o2_pct', '%')).toEqual(['%', 'share of 1']);
    expect(choices('excess_air_printed_pct', 'lambda')).toEqual(['%', 'air ratio (lambda)']);
    expect(choices('supply_running', "[in_i'Hg]")).toHaveLength(6);
    expect(choices('co_ppm', '[ppm]')).toEqual([]);
    expect(choices('note', '')).toEqual([]);
  });
});
