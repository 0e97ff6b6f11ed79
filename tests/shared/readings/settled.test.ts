import { describe, expect, test } from 'vitest';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';
import { remarks } from './small-export.ts';

/** Invented exports that settle by themselves what others leave open, each with its known contents. */
const lines = (...rows: readonly string[]): string => `${rows.join('\n')}\n`;

const told = async (text: string, names: readonly string[]): Promise<string[]> =>
  rowsOf((await accepted(text)).tables['accepted']).map((row) => names.map((name) => row[name]).join(' '));

describe('the order of day and month', () => {
  test.each([
    ['Date (mm/dd/yyyy)', '2022-03-04'],
    ['Date [dd/mm/yyyy]', '2022-04-03'],
    ['Datum (TT/MM/JJJJ)', '2022-04-03'],
    ['Date JJ/MM/AAAA', '2022-04-03'],
    ['Data (gg/mm/aaaa)', '2022-04-03'],
    ['Datum (dd/mm/jjjj)', '2022-04-03'],
  ])('stands in the head %s', async (head, date) => {
    expect(await told(lines(`Boiler,${head},O2 (%)`, 'A1,03/04/2022,4.5'), ['taken_at'])).toEqual([date]);
  });

  test('stands below the head', async () => {
    const text = lines('Boiler,Date,O2,Stack', ',(mm/dd/yyyy),%,degC', 'A1,03/04/2022,4.5,171');
    expect(await told(text, ['taken_at', 'flue_C'])).toEqual(['2022-03-04 171']);
  });

  test('is what the dates show where the head says another', async () => {
    const text = lines('Boiler,Date (dd/mm/yyyy),O2 (%)', 'A1,03/04/2022,4.5', 'A1,03/14/2022,4.5');
    expect(await told(text, ['taken_at'])).toEqual(['2022-03-04', '2022-03-14']);
  });
});

describe('units in a line above the table', () => {
  test('hold for the columns of their kind', async () => {
    const text = lines(
      'Campus export;;;;',
      'Temperature unit: Celsius;;;;',
      'Druckeinheit;mbar;;;',
      'Kessel;Datum;O2;Abgas;Gasdruck Ruhe',
      'K1;01.02.2024;4,2;172;22,0',
    );
    expect(await told(text, ['o2_pct', 'flue_C', 'supply_static_Pa'])).toEqual(['4.2 172 2200']);
  });

  test('several in one line', async () => {
    const text = lines('Units: °F, mbar', 'Boiler,Date,O2,Stack,Gas static', 'A1,2022-03-04,4.5,350,9.9');
    // 350 °F is (350 - 32) / 1.8 = 176.667 °C.
    expect(await told(text, ['flue_C', 'supply_static_Pa'])).toEqual(['176.666666667 990']);
  });

  test('two of one kind settle nothing', async () => {
    const text = lines('Units: °F, °C', 'Boiler,Date,O2,Stack', 'A1,2022-03-04,4.5,350');
    expect((await readReadings([fileOf('export.csv', text)])).status).toBe('question');
  });
});

describe('heads', () => {
  test('fire and state in short, four readings on a line', async () => {
    const text = lines(
      'Tag,Date,O2 Hi AF,O2 Hi AL,O2 Lo AF,O2 Lo AL,Stk Temp Hi AF (F),Stk Temp Hi AL (F)',
      'B-1,2023-10-23,5.4,4.1,7.2,6.0,392,383',
    );
    expect(await told(text, ['fire', 'state', 'o2_pct', 'flue_C'])).toEqual([
      'high as_found 5.4 200',
      'high as_left 4.1 195',
      'low as_found 7.2 ',
      'low as_left 6 ',
    ]);
  });

  test.each([
    ['Carbon monoxide (raw)', 'co_ppm'],
    ['Carbon monoxide air-free (ppm)', 'co_air_free_ppm'],
    ['Kohlenmonoxid unverdünnt [ppm]', 'co_air_free_ppm'],
    ['Oxygen (dry) %', 'o2_pct'],
    ['Inlet Gas Pressure Static (mbar)', 'supply_static_Pa'],
    ['Gas supply, running (mbar)', 'supply_running_Pa'],
    ['Dyn (mbar)', 'supply_running_Pa'],
  ])('%s', async (head, column) => {
    const text = lines(`Boiler,Date,"${head}",Flue °C`, 'A1,2022-03-04,20,180');
    expect(await told(text, [column])).toEqual([column.endsWith('_Pa') ? '2000' : '20']);
  });

  test('that nobody understands are named, and so is the way to say what they are', async () => {
    const text = lines('Boiler,Date,O2 (%),NOx @ 3% O2 (ppm),Net temp (C)', 'A1,2022-03-04,4.5,28,150');
    const result = await accepted(text);
    expect(remarks(result)).toContainEqual(
      expect.stringMatching(/export\.csv: 2 columns are not read.*"NOx @ 3% O2 \(ppm\)", "Net temp \(C\)".*--profile/),
    );
    expect(rowsOf(result.tables['accepted'])[0]['nox_ppm']).toBe('');
  });

  test('words for fire and state in short', async () => {
    const text = lines('Kessel;Datum;Last;Zustand;O2 (%)', 'K1;2024-02-13;GL;A.F.;4,5', 'K1;2024-02-13;TL;A.L.;5,5');
    expect(await told(text, ['fire', 'state'])).toEqual(['high as_found', 'low as_left']);
  });
});

test('two firing rates at one minute are two readings, no revision', async () => {
  const text = lines(
    'Boiler,Date,State,Firing rate (%),O2 (%)',
    'A1,2022-12-13,Found,100,4.6',
    'A1,2022-12-13,Found,40,6.1',
  );
  const result = await accepted(text);
  expect(await told(text, ['firing_rate_pct', 'o2_pct'])).toEqual(['100 4.6', '40 6.1']);
  expect(remarks(result).join()).not.toMatch(/other values/);
});

describe('the basis of CO by the quotient of CO and CO2 that the file prints', () => {
  // The quotient is of raw CO: 60 ppm over 9.0 % is 0.00067, 120 over 8.5 % 0.00141.
  const of = (co: readonly number[]): string =>
    lines(
      'Boiler,Date,O2 (%),CO2 (%),CO (ppm),Ratio CO/CO2',
      `A1,2022-03-04,5.0,9.0,${co[0]},0.00067`,
      `A2,2022-03-05,5.9,8.5,${co[1]},0.00141`,
    );

  test('raw', async () => {
    expect(await told(of([60, 120]), ['co_ppm', 'co_air_free_ppm'])).toEqual(['60 ', '120 ']);
  });

  test('air-free', async () => {
    // 60 x 20.9 / (20.9 - 5.0) = 79 and 120 x 20.9 / (20.9 - 5.9) = 167 ppm.
    expect(await told(of([79, 167]), ['co_ppm', 'co_air_free_ppm'])).toEqual([' 79', ' 167']);
  });

  test('rows that disagree, and one alone, settle nothing', async () => {
    for (const text of [of([60, 167]), of([60, 300]), lines(...of([60, 120]).split('\n').slice(0, 2))])
      expect((await readReadings([fileOf('export.csv', text)])).status).toBe('question');
  });
});

test('boilers that are called A, C and F are no units of measure', async () => {
  const text = lines('Date,Unit,O2 (%)', '2024-03-14,A,4.6', '2024-03-14,C,4.7', '2024-03-14,F,4.8');
  expect(await told(text, ['unit', 'o2_pct'])).toEqual(['A 4.6', 'C 4.7', 'F 4.8']);
});

test('a short row whose last value stands under no head is set aside', async () => {
  const text = lines(
    'Unit;Date;O2 (%);;CO raw (ppm);',
    'U-1;13.02.2022;5,0;;30;',
    'U-2;13.02.2022;5,0;;31',
    'U-3;13.02.2022;5,0;32',
  );
  const { tables } = await accepted(text);
  expect(rowsOf(tables['accepted']).map((row) => `${row['unit']} ${row['co_ppm']}`)).toEqual(['U-1 30', 'U-2 31']);
  expect(rowsOf(tables['set-aside']).map((row) => row['source_line'])).toEqual(['4']);
});

test('the title of a page is known again on the next one, and is no reading', async () => {
  const page = (number: number, ...rows: readonly string[]): readonly string[] => [
    `North plant, combustion log               page ${number}`,
    '',
    'Unit   Date        Fire   O2     Stack',
    '                          %      F    ',
    '--------------------------------------',
    ...rows,
  ];
  const text = lines(
    ...page(1, 'BN-1   2021-02-03  HI     4.6    356  ', 'BN-1   2021-02-03  LO     6.9    284  '),
    ...page(2, 'BN-2   2021-02-04  HI     5.2    356  '),
  );
  const { tables } = await accepted(text);
  expect(
    rowsOf(tables['accepted']).map((row) => `${row['unit']} ${row['fire']} ${row['o2_pct']} ${row['flue_C']}`),
  ).toEqual(['BN-1 high 4.6 180', 'BN-1 low 6.9 140', 'BN-2 high 5.2 180']);
  expect(rowsOf(tables['set-aside'])).toEqual([]);
});

test('spellings of one id that no register settles are named', async () => {
  const text = lines(
    'Unit,Date,O2 (%)',
    'B-07,2022-03-04,4.5',
    'b07,2022-03-05,4.6',
    'B-7,2022-03-06,4.7',
    'B-8,2022-03-07,4.8',
  );
  expect(remarks(await accepted(text))).toContainEqual(
    expect.stringMatching(/^warning: 1 unit id stands there in several spellings, such as "B-07", "B-7", "b07"/),
  );
});

test('a time of day behind the day 0 of spreadsheets', async () => {
  const text = lines('Unit,Date,Time,O2 (%)', 'B-1,2022-03-04 00:00:00,1899-12-30 14:05:00,4.5');
  expect(await told(text, ['taken_at'])).toEqual(['2022-03-04T14:05']);
});

test('Dutch hours, loads by their power, and heads of six countries', async () => {
  const text = lines(
    'Ketelnr.;Messung am;Tijd;Tª humos (ºC);T aanzuig (°C);O2 max pot.;O2 min pot.',
    'K01;13-02-2022;9.05 u;160;21;4,5;6,1',
  );
  expect(await told(text, ['unit', 'taken_at', 'fire', 'flue_C', 'air_C', 'o2_pct'])).toEqual([
    'K01 2022-02-13T09:05 high 160 21 4.5',
    'K01 2022-02-13T09:05 low 160 21 6.1',
  ]);
});

test('per cent by volume', async () => {
  const text = lines('Unit;Date;O₂ (Vol.-%);CO₂ [Vol-%]', 'B-1;2022-03-04;4,5;9,4');
  expect(await told(text, ['o2_pct', 'co2_pct'])).toEqual(['4.5 9.4']);
});

test('CO and air-free CO dashed in one row are one row', async () => {
  const text = lines('Unit,Date,O2 (%),CO (ppm),CO air-free (ppm)', 'B-1,2022-03-04,4.5,----,----');
  expect(remarks(await accepted(text))).toContainEqual(
    expect.stringMatching(/1 row with other values has "----" for CO/),
  );
});

test.each([
  ['Brenner gereinigt', 'cleaned'],
  ['remplacé vanne gaz', 'gas_valve'],
  ['burner cleaned, ok', 'cleaned'],
  ['not replaced yet', undefined],
])('the note "%s" tells of %s', async (note, event) => {
  const { tables } = await accepted(lines('Unit,Date,O2 (%),Note', `B-1,2022-03-04,4.5,"${note}"`));
  expect(rowsOf(tables['told-events'])[0]?.['event']).toBe(event);
});

test('a high CO that is written as no number is named first', async () => {
  const rows = ['ca. 1200', '1200*', '4000 (max)', '12 (ok)'].map((co, i) => `B-${i},2022-03-04,4.5,${co}`);
  const result = await accepted(lines('Unit,Date,O2 (%),CO raw (ppm)', ...rows, 'B-9,2022-03-04,4.5,20'));
  expect(remarks(result).filter((remark) => remark.startsWith('danger'))).toHaveLength(3);
});

test('counts and totals below a table are no readings', async () => {
  const text = lines('Unit,Date,O2 (%),CO raw (ppm)', 'B-1,2022-03-04,4.5,30', 'Count,1,,', 'Grand total,,4.5,1530');
  const result = await accepted(text);
  expect(rowsOf(result.tables['account'])[0]['rows_read']).toBe('1');
  expect(remarks(result).join()).not.toContain('danger');
});

test('words for fire and state with a number behind them', async () => {
  const text = lines(
    'Unit,Date,Fire,State,O2 (%)',
    'B-1,2022-03-04,High (100%),As found (1),4.5',
    'B-1,2022-03-04,Stage 1,As left 2,5.5',
  );
  expect(await told(text, ['fire', 'state'])).toEqual(['high as_found', 'low as_left']);
});

test('a unit in a line of its own holds until the next one', async () => {
  const text = lines(
    'Date,O2 (%),CO raw (ppm)',
    'Boiler: B-01,,',
    '2022-03-04,4.5,30',
    '2022-03-05,4.6,31',
    'Boiler: B-02,,',
    '2022-03-06,4.7,32',
  );
  expect(await told(text, ['unit', 'o2_pct'])).toEqual(['B-01 4.5', 'B-01 4.6', 'B-02 4.7']);
});

test('inches of water as people write them', async () => {
  const text = lines('Unit,Date,Static (in. WG),"Running (""w.g.)","Draft ("" H2O)"', 'B-1,2022-03-04,10,9,-0.1');
  // 1 in. w.c. = 249.08891 Pa.
  expect(await told(text, ['supply_static_Pa', 'supply_running_Pa', 'draft_Pa'])).toEqual([
    '2490.8891 2241.80019 -24.908891',
  ]);
});
