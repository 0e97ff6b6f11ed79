import { describe, expect, test } from 'vitest';
import * as say from '../../../shared/messages/import.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

/** Shapes that exports of other decades and countries have; what they tell is written beside them by hand. */
const lines = (...text: string[]): string => `${text.join('\n')}\n`;
const told = async (text: string, columns: readonly string[], options = {}): Promise<string[]> =>
  rowsOf((await accepted(text, options)).tables['accepted']).map((row) => columns.map((name) => row[name]).join(' '));

describe('AF and AL', () => {
  const heads = (more: string): string => `Boiler,Date,HF O2 AF,HF CO raw AF,${more}`;

  test('beside AL, AF is as found', async () => {
    const text = lines(heads('HF O2 AL,HF CO raw AL'), 'B-10,2020-09-14,7.1,12,4.6,18');
    expect(await told(text, ['fire', 'state', 'o2_pct', 'co_ppm', 'co_air_free_ppm'])).toEqual([
      'high as_found 7.1 12 ',
      'high as_left 4.6 18 ',
    ]);
  });

  test('alone, CO AF is air-free', async () => {
    const text = lines('Boiler,Date,Fire,O2 (%),CO AF (ppm)', 'B-10,2020-09-14,high,7.1,44');
    expect(await told(text, ['co_ppm', 'co_air_free_ppm'])).toEqual([' 44']);
  });
});

test('of a test that prints minimum, mean and maximum only the mean is a reading; the others are set aside', async () => {
  const result = await accepted(
    lines(
      'Unit,Start,Stat,O2 %,CO ppm dry',
      'RB1,2022-05-04 08:00,Min,4.1,10',
      'RB1,2022-05-04 08:00,Mean,4.5,14',
      'RB1,2022-05-04 08:00,Max,4.9,1900',
    ),
  );
  expect(rowsOf(result.tables['accepted'])).toMatchObject([{ o2_pct: '4.5', co_ppm: '14' }]);
  expect(rowsOf(result.tables['set-aside']).map(({ source_line }) => source_line)).toEqual(['2', '4']);
  // The maximum is a high CO all the same.
  expect(result.found.highCo).toMatchObject([{ line: 4, found: '1900' }]);
});

describe('units in the cells that differ from row to row', () => {
  const text = (last: string): string =>
    lines(
      'Boiler|Date|O2 (%)|Stack|Gas running',
      'B-1|2021-06-03|5.1|212 °F|8 "WC',
      'B-1|2021-06-04|5.1|100 °C|20 mbar',
      `B-1|2021-06-05|5.1|${last}|2 kPa`,
    );

  test('are read each by its own', async () => {
    // 8 in. w.c. are 1992.7 Pa (UCUM [in_i'H2O] 249.08891 Pa).
    expect(await told(text('373 K'), ['flue_C', 'supply_running_Pa'])).toEqual([
      '100 1992.71128',
      '100 2000',
      '99.85 2000',
    ]);
  });

  test('a number without one is set aside where others have theirs', async () => {
    const outcome = await readReadings([fileOf('a.csv', text('180'))]);
    expect(outcome).toMatchObject({
      status: 'question',
      question: { message: expect.stringContaining('"Stack" does not say its unit') },
    });
  });
});

test('names in the first column and a test in each further one: refused in a sentence, nothing half read', async () => {
  const text = lines(
    'Field,Test 1,Test 2',
    'Boiler,B-1,B-2',
    'Date,10/14/2023,10/15/2023',
    'O2 %,4.6,6.1',
    'CO ppm (raw),22,14',
    'Stack °F,342,288',
  );
  expect(await readReadings([fileOf('a.csv', text)])).toMatchObject({
    status: 'error',
    message: expect.stringContaining('has its names in the first column (such as "Boiler")'),
  });
});

test('names with dot leaders, a title above each test', async () => {
  const text = lines(
    'METING 0041',
    'Datum......: 13-04-2019',
    'Tijd.......: 10:41',
    'Ketel......: KT 4',
    'Stand......: hoog',
    'O2.........: 4,7 %',
    'CO.........: OFL',
    'CO onverd..: OFL',
    'T rookgas..: 71,2 °C',
    '',
    'METING 0042',
    'Datum......: 13-04-2019',
    'Tijd.......: 10:58',
    'Ketel......: KT 4',
    'Stand......: laag',
    'O2.........: 5,6 %',
    'CO.........: 18 ppm',
    'CO onverd..: 25 ppm',
    'T rookgas..: 58,0 °C',
  );
  expect(await told(text, ['unit', 'fire', 'o2_pct', 'co_ppm', 'co_air_free_ppm', 'flue_C'])).toEqual([
    'KT 4 high 4.7 >2000 >2000 71.2',
    'KT 4 low 5.6 18 25 58',
  ]);
});

test('a bracket that is no unit of its column says nothing', async () => {
  const text = lines('Boiler,Date,Fire,O2 (%),Eff (G)', 'B-10,2020-09-14,high,7.1,81.9');
  expect(await told(text, ['efficiency_printed_pct'])).toEqual(['81.9']);
});

test('a ruled sheet in fixed columns: title, units, rules and signature are no readings', async () => {
  const result = await accepted(
    lines(
      '                 BOILER HOUSE LOG   SITE: MARSH LANE',
      'Plant     Date      Time   Fire  O2    CO2   Flue   Inlet',
      '                                 %     %     degC   degC',
      '---------------------------------------------------------',
      'Boiler 1  23/11/98  09:10  High  4.2   9.5   192    24',
      'Boiler 1  23/11/98  09:40  Low   6.8   8.0   151    24',
      '---------------------------------------------------------',
      'Signed: R. Holt                               Page 1 of 1',
    ),
  );
  expect(rowsOf(result.tables['set-aside'])).toEqual([]);
  expect(rowsOf(result.tables['accepted'])).toMatchObject([
    {
      unit: 'Boiler 1',
      taken_at: '1998-11-23T09:10',
      fire: 'high',
      o2_pct: '4.2',
      co2_pct: '9.5',
      flue_C: '192',
      air_C: '24',
    },
    { unit: 'Boiler 1', taken_at: '1998-11-23T09:40', fire: 'low', o2_pct: '6.8' },
  ]);
});

describe('what a file does not settle is asked', () => {
  const ask = async (text: string): Promise<unknown> => readReadings([fileOf('a.csv', text)]);

  test('O2 as a share of 1 under a per cent head', async () => {
    const text = lines('unit,taken_at,O2 (%),CO raw (ppm)', 'B-1,2024-01-05,0.046,22', 'B-1,2024-01-06,0.051,25');
    const question = { message: expect.stringContaining('so they may be shares of 1'), parameter: 'profiles' };
    expect(await ask(text)).toMatchObject({ status: 'question', question });
    const profile = { name: 'a.csv', columns: { 'O2 (%)': { field: 'o2_pct', unit: '1' } } };
    expect(await told(text, ['o2_pct'], { profiles: [profile] })).toEqual(['4.6', '5.1']);
  });

  test('one value a line is refused in a sentence, and is no register', async () => {
    const text = lines('Equipment,Timestamp,Parameter,Value,Unit', 'B-1,2024-01-05 10:00,O2,4.6,%');
    expect(await ask(text)).toMatchObject({ status: 'error', message: expect.stringContaining('one value a line') });
  });
});

test('a column of units beside each number tells its unit, and is no unit of a building', async () => {
  const text = lines('Boiler,Date,O2,Unit,CO raw,Unit,Stack,Unit', 'B-1,2024-01-05,4.6,%,22,ppm,212,F');
  expect(await told(text, ['unit', 'o2_pct', 'co_ppm', 'flue_C'])).toEqual(['B-1 4.6 22 100']);
});

test('a high CO in a row that two rows ran together into is named first', async () => {
  const result = await accepted(
    lines(
      'unit,taken_at,fire,state,o2_pct,co_ppm',
      'B-2,2023-04-05,low,as_found,6.3,11B-3,2023-04-05,high,as_found,5.0,900',
      'B-4,2023-04-05,high,as_found,5,1,20',
      'B-5,2023-04-05,high,as_found,5.1,20',
    ),
  );
  expect(result.found.highCo).toMatchObject([{ line: 2, found: '900 (if it stands where the head line says)' }]);
});

test('HIGH and its like in place of a CO are bounds', async () => {
  const text = lines(
    'unit,taken_at,fire,o2_pct,co_ppm',
    ...['HIGH', 'over', '>>>', 'OL'].map((word, i) => `B-${i},2023-04-05,high,5,${word}`),
  );
  expect(await told(text, ['co_ppm'])).toEqual(Array(4).fill('>2000'));
});

describe('columns told by their values', () => {
  test('a firing rate in words is the fire, not a number over range', async () => {
    const text = lines(
      'Plant ref,Date,Time,Firing rate,Status,O2%,CO ppm raw,Gas standing pressure mbar,Gas working pressure mbar,Nett eff',
      'PLT 02,2021-06-21,10:15,High,Pre,4.5,36,21.0,20.0,88.2',
      'PLT 02,2021-06-21,10:55,Low,Pre,5.6,12,21.0,20.4,90.2',
    );
    const names = [
      'fire',
      'state',
      'firing_rate_pct',
      'supply_static_Pa',
      'supply_running_Pa',
      'efficiency_printed_pct',
    ];
    expect(await told(text, names)).toEqual(['high as_found  2100 2000 88.2', 'low as_found  2100 2040 90.2']);
  });

  test('a firing rate in numbers stays one', async () => {
    const text = lines('Unit,Date,Firing rate,O2%', 'B-01,2021-06-21,100,4.5', 'B-01,2021-06-21,30,5.6');
    expect(await told(text, ['fire', 'firing_rate_pct'])).toEqual(['unnamed 100', 'unnamed 30']);
  });

  test.each([
    [
      'Anlage;Datum;Laststufe;Messung;O2 [%]',
      'K 07;03.02.2023;Volllast;vorher;4,2',
      'K 07;13.02.2023;Teillast;nachher;5,9',
    ],
    ['Ketel;Datum;Stand;Meting;O2 [%]', 'K 07;13-02-2024;hooglast;voor;4,2', 'K 07;13-03-2024;laaglast;na;5,9'],
    ['Caldera;Fecha;Potencia;Ensayo;O2 [%]', 'C-1;25/11/2021;máxima;antes;4,2', 'C-1;26/11/2021;mínima;después;5,9'],
    [
      'Chaudière;Date;Allure;Contrôle;O2 [%]',
      'C-1;25/11/2021;grande;avant réglage;4,2',
      'C-1;26/11/2021;petite;après réglage;5,9',
    ],
  ])('%s', async (...text) => {
    expect(await told(lines(...text), ['fire', 'state', 'o2_pct'])).toEqual(['high as_found 4.2', 'low as_left 5.9']);
  });

  test('a column of other things that are high or low is no fire', async () => {
    const text = lines('Unit,Date,Noise,O2%', 'B-01,2021-06-21,high,4.5', 'B-01,2021-06-22,low,5.6');
    expect(await told(text, ['fire'])).toEqual(['unnamed', 'unnamed']);
  });
});

test('words of over range for a value that no reading of the analyzer shows leave it unknown, in a whole sentence', async () => {
  const { found } = await accepted(lines('Unit,Date,O2%,Flue temp (C)', 'B-01,2021-06-21,4.5,OFL'));
  expect(found.overRange).toEqual([{ field: 'flue', cells: 1, least: '' }]);
  expect(say.overRangeRemark(1, 'flue', '')).toMatch(/it counts as unknown\.$/);
});

test('a printout that a spreadsheet wrote has its own mark behind the colon', async () => {
  const text = lines(
    ...['Test 1', 'Boiler:,B-4', 'Date:,03/14/2024', 'Fire:,High', 'O2:,4.2,%', 'CO raw:,38,ppm', 'Stack:,371,F', ''],
    ...['Test 2', 'Boiler:,B-4', 'Date:,03/14/2024', 'Fire:,Low', 'O2:,5.6,%', 'CO raw:,>9999,ppm', 'Stack:,301,F'],
  );
  expect(await told(text, ['unit', 'taken_at', 'fire', 'o2_pct', 'co_ppm'])).toEqual([
    'B-4 2024-03-14 high 4.2 38',
    'B-4 2024-03-14 low 5.6 >9999',
  ]);
});

test('hours that a space parts from their letter', async () => {
  const text = lines('appareil;date;heure;O2 %', 'A7;5 février 2024;14 h 05;4,2', 'A7;5 février 2024;9 h 35;5,2');
  expect(await told(text, ['taken_at'])).toEqual(['2024-02-05T09:35', '2024-02-05T14:05']);
});
