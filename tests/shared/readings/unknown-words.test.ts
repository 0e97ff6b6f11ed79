import { describe, expect, test } from 'vitest';
import { fileShapes } from '../../../cells/parts/file-shapes.ts';
import { describe as describeReadings } from '../../../cells/readings/describe.ts';
import { answerProfile } from '../../../shared/readings/answer-profile.ts';
import { accepted, rowsOf } from './read-readings.ts';

const TEXT = [
  'Boiler,Date,Fire,State,O2 (%),Stack (°F)',
  'B-01,2024-03-13,high,as found,4.6,312',
  'B-01,2024-03-13,Boost,as found,4.2,330',
  'B-02,2024-03-13,low,Trimmed,5.1,250',
  'B-02,2024-03-14,BOOST,Trimmed,4.1,331',
  'B-03,2024-03-14,Boost,as left,4.0,329',
  '',
].join('\n');

// More than 256 kB of rows, by which a file is planned, before anything unusual.
const long = (rows: readonly string[]): string =>
  [
    'Boiler;Date;Fire;State;O2 (%);Stack (°F)',
    ...Array.from({ length: 9000 }, (_, i) => `B-${i};2024-03-13;high;as found;4.6;312`),
    ...rows,
    '',
  ].join('\n');

test('what comes only far below the beginning of a file is told with its count', async () => {
  const text = long([
    ...['B-x;2024-03-13;high;as found;4,6;312', 'B-y;2024-03-13;low;as found;4,7;312'],
    ...['B-x;2024-03-14;Boost;as found;4.6;312', 'B-y;2024-03-14;Boost;as found;4.7;312'],
  ]);
  expect(text.length).toBeGreaterThan(262_144);
  const result = await accepted(text);
  expect(result.found.otherMarks).toEqual([{ file: 'export.csv', decimal: '.', example: '4,6', rows: 2, line: 9002 }]);
  expect(result.found.unknownWords).toMatchObject([{ word: 'Boost', rows: 2, line: 9004 }]);
  const texts = describeReadings(result).remarks.map(({ text: one }) => one);
  expect(texts.filter((one) => one.includes('2 rows are set aside because'))).toHaveLength(1);
  // A mark for each number is the answer of a profile: all four numbers are read then.
  const profiles = [{ decimal: 'each', words: { fire: { Boost: 'high' } } }];
  expect((await accepted(text, { profiles })).tables['accepted'].rows).toBe(9004);
});

describe('words for fire and state that nobody knows', () => {
  test('are told once each, with their rows, the first line and how to answer', async () => {
    const result = await accepted(TEXT);
    expect(result.found.unknownWords).toEqual([
      { file: 'export.csv', head: 'Fire', field: 'fire', word: 'Boost', rows: 3, line: 3 },
      { file: 'export.csv', head: 'State', field: 'state', word: 'Trimmed', rows: 1, line: 4 },
    ]);
    const remark = describeReadings(result).remarks.find(
      ({ text }) => text.includes('"Boost"') && text.includes('means'),
    );
    expect(remark?.text).toMatch(/the 3 rows with it are set aside, the first on line 3\. Say at the columns/);
    expect(remark?.byCommand).toContain('{"words":{"fire":{"Boost":"high"}}}');
  });

  test('stand with the columns of the file, and what they mean is kept in its profile', async () => {
    const result = await accepted(TEXT);
    const [shape] = fileShapes(result.tables['columns']);
    expect(shape.columns.map(({ head, words }) => [head, words.length])).toContainEqual(['State', 1]);
    const profile = answerProfile('readings', 'export.csv', undefined, shape.columns, {
      words: { fire: { Boost: 'high' }, state: { Trimmed: 'as_left' } },
    });
    const { tables, found } = await accepted(TEXT, { profiles: [profile] });
    expect(found.unknownWords).toEqual([]);
    expect(rowsOf(tables['accepted']).map(({ fire, state }) => `${fire} ${state}`)).toEqual([
      'high as_found',
      'high as_found',
      'low as_left',
      'high as_left',
      'high as_left',
    ]);
  });
});
