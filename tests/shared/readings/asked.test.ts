import { describe, expect, test } from 'vitest';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';
import { csv, remarks } from './small-export.ts';

test('a fuel that nobody names is proposed from the CO2max that the readings imply', async () => {
  // Propane: CO2max 13.7 %, so 13.7 (20.95 - O2) / 20.95 % CO2 (stoichiometry).
  const rows = [3, 4.5, 6].map(
    (o2, i) => `B-09,2024-03-1${i},high,as_found,${o2},${((13.7 * (20.95 - o2)) / 20.95).toFixed(1)}`,
  );
  const result = await accepted(`unit,taken_at,fire,state,o2_pct,co2_pct\n${rows.join('\n')}\n`);
  expect(remarks(result)).toContainEqual(
    expect.stringMatching(
      /^warning: 3 readings of 1 unit name no fuel, but evidence does, such as for B-09.*13\.7 .*that of propane.*--accept fuels/,
    ),
  );
});

describe('states of single printouts', () => {
  const rows = [
    'B-01,2024-03-13T09:00,high,,4.6,28,',
    'B-02,2024-03-13T09:00,high,,4.6,28,',
    'B-02,2024-03-13T09:20,high,,4.8,28,',
    'B-02,2024-03-13T09:40,high,,5.0,28,',
  ];
  const states = async (options: Record<string, unknown>): Promise<string[]> =>
    rowsOf((await accepted(csv(...rows), options)).tables['accepted']).map((row) => row['state']);

  test('stay unknown until the user says', async () => {
    expect(await states({})).toEqual(['unknown', 'unknown', 'unknown', 'unknown']);
    expect(await states({ singleReading: 'as_left' })).toEqual(['as_left', 'as_found', 'trial', 'as_left']);
    expect(await states({ singleReading: 'as_found' })).toEqual(['as_found', 'as_found', 'trial', 'as_left']);
  });
});

describe('what the file does not settle is asked, with what answers it', () => {
  const question = async (text: string, options: Record<string, unknown> = {}): Promise<string> => {
    const outcome = await readReadings([fileOf('export.csv', text)], options);
    return outcome.status === 'question'
      ? `${outcome.question.message} ${outcome.question.byCommand}`
      : JSON.stringify(outcome);
  };

  test('order of day and month', async () => {
    const text = csv('B-01,3/4/2024,high,as_found,4.6,28,', 'B-01,5/6/2024,high,as_found,4.6,28,');
    expect(await question(text)).toMatch(/line 2 may be 2024-04-03 or 2024-03-04.*--date-order dmy/);
    const answered = await accepted(text, { dateOrder: 'mdy' });
    expect(rowsOf(answered.tables['accepted'])[0]['taken_at']).toBe('2024-03-04');
  });

  test('one date over 12 settles all of its file and only that', async () => {
    const open = csv('B-01,3/4/2024,high,as_found,4.6,28,');
    const settled = csv('B-02,3/4/2024,high,as_found,4.6,28,', 'B-02,3/14/2024,high,as_found,4.6,28,');
    const outcome = await readReadings([fileOf('a.csv', settled), fileOf('b.csv', open)]);
    expect(outcome.status).toBe('question');
    const both = await accepted([fileOf('a.csv', settled), fileOf('b.csv', open)], { dateOrder: 'dmy' });
    expect(rowsOf(both.tables['accepted']).map((row) => `${row['unit']} ${row['taken_at']}`)).toEqual([
      'B-01 2024-04-03',
      'B-02 2024-03-04',
      'B-02 2024-03-14',
    ]);
  });

  test('°C or °F, mbar or in. w.c., raw or air-free CO, decimal or thousands', async () => {
    const at = 'Boiler,Date,O2 (%)';
    expect(await question(`${at},Stack temp\nB-01,2024-03-13,4.6,180\n`)).toMatch(
      /"Stack temp" does not say its unit \(C, F\?\); its first values are 180.*--profile/,
    );
    expect(await question(`${at},Static pressure\nB-01,2024-03-13,4.6,7\n`)).toMatch(/"Static pressure".*inwc, mbar/);
    expect(await question(`${at},CO\nB-01,2024-03-13,4.6,28\n`)).toMatch(/raw as the analyzer shows it or air-free/);
    expect(await question('Boiler;Date;CO raw (ppm)\nB-01;2024-03-13;1,028\n')).toMatch(
      /"1,028" may have a decimal mark or a thousands mark/,
    );
  });

  test.each(['CO', 'CO ppm', 'CO (ppm)', 'CO [ppm]', 'CO_PPM', 'ppm CO', 'Carbon monoxide ppm'])(
    'the basis of CO under the head %s',
    async (head) => {
      expect(await question(`Boiler,Date,O2 (%),${head}\nB-01,2024-03-13,4.6,28\n`)).toMatch(
        /raw as the analyzer shows it or air-free.*"co_ppm".*"co_air_free_ppm".*--profile/,
      );
    },
  );

  test('two decimal marks in one file: which is its own, or each number by its mark', async () => {
    const text = [
      'Kessel;Datum;O2 (%);CO unverd. (ppm)',
      'K-01;2024-03-13;4,1;1.028',
      'K-02;2024-03-13;4.2;31',
      'K-03;2024-03-13;5.3;1,234.5',
      'K-04;2024-03-13;5,6;2.034,5',
      '',
    ].join('\n');
    expect(await question(text)).toMatch(/two decimal marks: most are written as "4,1", and 3 as "4.2".*"\.".*"each"/);
    const told = async (decimal: string): Promise<string[]> => {
      const { tables } = await accepted(text, { profiles: [{ decimal }] });
      const kept = rowsOf(tables['accepted']).map((row) => `${row['unit']} ${row['o2_pct']} ${row['co_air_free_ppm']}`);
      return [...kept, ...rowsOf(tables['set-aside']).map((row) => row['reason'])];
    };
    // By its own mark each number is plain but 1.028, which is 1028 to those who write 4,1.
    expect(await told('each')).toEqual([
      'K-02 4.2 31',
      'K-03 5.3 1234.5',
      'K-04 5.6 2034.5',
      'CO unverd. (ppm): "1.028" may have a decimal mark or a thousands mark',
    ]);
    expect(await told(',')).toEqual([
      'K-01 4.1 1028',
      'K-04 5.6 2034.5',
      'O2 (%): "4.2" has a decimal point, while the numbers of this file have a decimal comma',
      'O2 (%): "5.3" has a decimal point, while the numbers of this file have a decimal comma',
    ]);
  });

  test('a page says how it is answered there, a command which option answers', async () => {
    const outcome = await readReadings([fileOf('export.csv', csv('B-01,3/4/2024,high,as_found,4.6,28,'))]);
    if (outcome.status !== 'question') throw new Error(outcome.status);
    expect(outcome.question.remedy).toBe(
      'Answer at the cell: day first (4/3 is 4 March), or month first (4/3 is April 3).',
    );
    expect(outcome.question.byCommand).toContain('--date-order');
  });

  test('no unit anywhere', async () => {
    expect(await question('Date,O2 (%),CO raw (ppm)\n2024-03-13,4.6,28\n')).toMatch(
      /does not say which unit.*"file":"export.csv".*"unit":"B-07"/,
    );
  });
});
