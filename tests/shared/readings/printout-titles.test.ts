import { describe, expect, test } from 'vitest';
import { readTitle } from '../../../shared/readings/title-words.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

const told = async (...lines: readonly string[]): Promise<string[]> =>
  rowsOf((await accepted(`${lines.join('\n')}\n`)).tables['accepted']).map(
    ({ unit, taken_at, fire, state, o2_pct, co_ppm }) => `${unit} ${taken_at} ${fire} ${state} ${o2_pct} ${co_ppm}`,
  );
const results = (o2: number, co: number): string[] => [
  `O2: ${o2} %`,
  `CO2: ${(20.9 - o2) * 0.56} %`,
  `CO raw: ${co} ppm`,
  'Stack: 182 °C',
];
const head = (unit: string, date: string): string[] => [`Boiler: ${unit}`, `Date: ${date}`, 'Technician: KL'];

test.each([
  ['FLUE GAS TEST - HIGH FIRE - AS FOUND', 'high', 'as_found', ''],
  ['*** Low fire, as left ***', 'low', 'as_left', ''],
  ['Abgasmessung Volllast vorher', 'high', 'as_found', ''],
  ['Kessel: Volllast, vorgefunden', 'high', 'as_found', ''],
  ['Analyse de combustion, puissance max, tel que laissé', 'high', 'as_left', ''],
  ['Análisis - llama alta - después', 'high', 'as_left', ''],
  ['Analisi fumi, potenza minima, prima', 'low', 'as_found', ''],
  ['Rookgasmeting laagvuur achteraf', 'low', 'as_left', ''],
  ['Intermediate test', '', '', ''],
  ['Combustion test 12.03.2024', '', '', '12.03.2024'],
  ['High fire 2024-03-12 10:15', 'high', '', '2024-03-12 10:15'],
  ['Report 12.03.2024', '', '', ''],
  ['Printed 12.03.2024', '', '', ''],
  ['High fire 12.03.2024 to 13.03.2024', '', '', ''],
])('the title "%s"', (title, fire, state, date) => {
  expect(readTitle(title)).toMatchObject({ fire, state, date });
});

test('a title above each printout names its fire and its state', async () => {
  expect(
    await told(
      ...['FLUE GAS TEST - HIGH FIRE - AS FOUND', ...head('B-1', '2024-03-12'), ...results(4.6, 12), ''],
      ...['FLUE GAS TEST - LOW FIRE - AS LEFT', ...head('B-1', '2024-03-12'), ...results(5.9, 8), ''],
      ...[...head('B-2', '2024-03-12'), ...results(5.1, 9)],
    ),
  ).toEqual([
    'B-1 2024-03-12 high as_found 4.6 12',
    'B-1 2024-03-12 low as_left 5.9 8',
    'B-2 2024-03-12 unnamed unknown 5.1 9',
  ]);
});

test('a title between the head of a printout and its results, without blank lines', async () => {
  expect(
    await told(
      ...[...head('B-1', '2024-03-12'), 'HIGH FIRE', ...results(4.6, 12), 'LOW FIRE', ...results(5.9, 8)],
      ...[...head('B-2', '2024-03-13'), 'HIGH FIRE', ...results(4.1, 13), 'LOW FIRE', ...results(5.2, 9)],
    ),
  ).toEqual([
    'B-1 2024-03-12 high unknown 4.6 12',
    'B-1 2024-03-12 low unknown 5.9 8',
    'B-2 2024-03-13 high unknown 4.1 13',
    'B-2 2024-03-13 low unknown 5.2 9',
  ]);
});

test('a unit and a date in a block of their own hold for the blocks below it, until the next one', async () => {
  expect(
    await told(
      ...[...head('B-1', '2024-03-12'), '', ...results(4.6, 12), '', ...results(5.9, 8), ''],
      ...[...head('B-2', '2024-03-13'), '', ...results(4.1, 13), ''],
    ),
  ).toEqual([
    'B-1 2024-03-12 unnamed unknown 4.6 12',
    'B-1 2024-03-12 unnamed unknown 5.9 8',
    'B-2 2024-03-13 unnamed unknown 4.1 13',
  ]);
});

test('a state above the fires holds until the next state, and not for the next unit', async () => {
  expect(
    await told(
      ...[...head('B-1', '2024-03-12'), '', 'AS FOUND', 'HIGH FIRE', ...results(4.6, 12), ''],
      ...['LOW FIRE', ...results(5.9, 8), '', 'AS LEFT', 'HIGH FIRE', ...results(4.2, 14), ''],
      ...[...head('B-2', '2024-03-13'), '', 'HIGH FIRE', ...results(4.1, 13)],
    ),
  ).toEqual(
    [
      'B-1 2024-03-12 high as_found 4.6 12',
      'B-1 2024-03-12 low as_found 5.9 8',
      'B-1 2024-03-12 high as_left 4.2 14',
      'B-2 2024-03-13 high unknown 4.1 13',
    ].toSorted(),
  );
});

test('a fire of the last block is not that of a block below a new state', async () => {
  expect(
    await told(
      ...[...head('B-1', '2024-03-12'), '', 'AS FOUND', 'HIGH FIRE', ...results(4.6, 12), ''],
      ...['AS LEFT', ...results(4.2, 14)],
    ),
  ).toEqual(['B-1 2024-03-12 high as_found 4.6 12', 'B-1 2024-03-12 unnamed as_left 4.2 14']);
});

test('a date above a printout without any other is its date', async () => {
  expect(
    await told(
      ...['2024-03-12 10:15', 'Boiler: B-1', ...results(4.6, 12), ''],
      ...['2024-03-13 11:20', 'Boiler: B-2', ...results(5.9, 8)],
    ),
  ).toEqual(['B-1 2024-03-12T10:15 unnamed unknown 4.6 12', 'B-2 2024-03-13T11:20 unnamed unknown 5.9 8']);
});

test('a unit in a title is that of the printouts below it, until the next one', async () => {
  const test = (date: string, o2: number): string[] => [`Date: ${date}`, ...results(o2, 9), '--------'];
  expect(
    await told(
      ...['Kessel K-03 - Volllast - vorher', ...test('2024-03-12', 4.6), 'Teillast', ...test('2024-03-12', 5.9)],
      ...['Kessel Nr. 4 - Volllast', ...test('2024-03-13', 4.1), 'Messung 17', ...test('2024-03-14', 4.2)],
    ),
  ).toEqual(
    [
      'K-03 2024-03-12 high as_found 4.6 9',
      'K-03 2024-03-12 low unknown 5.9 9',
      '4 2024-03-13 high unknown 4.1 9',
      '4 2024-03-14 unnamed unknown 4.2 9',
    ].toSorted(),
  );
});

test('leaders and gaps before a number stand for the mark between name and value', async () => {
  expect(
    await told(
      ...['Boiler: B-1', 'Date: 2024-03-12', '', 'HIGH FIRE'],
      ...['O2 ........ 4.6 %', 'CO raw      >4000 ppm', 'Stack 182 °C', ''],
      ...['LOW FIRE', 'O2 ........ 5.9 %', 'CO raw      8 ppm', 'Stack…… 120 °C'],
    ),
  ).toEqual(['B-1 2024-03-12 high unknown 4.6 >4000', 'B-1 2024-03-12 low unknown 5.9 8']);
});

test('a head lost between printouts that each have one is not replaced by another one', async () => {
  const lost = [...results(5.9, 8), ''];
  const { tables } = await accepted(
    [
      ...head('B-1', '2024-03-12'),
      ...results(4.6, 12),
      '',
      ...lost,
      ...head('B-3', '2024-03-14'),
      ...results(4.1, 13),
      '',
    ].join('\n'),
  );
  expect(rowsOf(tables['accepted']).map(({ unit, o2_pct }) => `${unit} ${o2_pct}`)).toEqual(['B-1 4.6', 'B-3 4.1']);
  expect(tables['set-aside'].rows).toBe(1);
});

test('a head whose results are lost gives its unit to no other', async () => {
  const { tables } = await accepted(
    `${[
      ...[...head('B-1', '2024-03-12'), '', ...results(4.6, 12), '', ...results(5.9, 8), ''],
      ...[...head('B-2', '2024-03-13'), ''],
      ...[...head('B-3', '2024-03-14'), '', ...results(4.1, 13)],
    ].join('\n')}\n`,
  );
  expect(rowsOf(tables['accepted']).map(({ unit }) => unit)).toEqual(['B-1', 'B-1', 'B-3']);
  expect(tables['set-aside'].rows).toBe(1);
});

describe.each([
  [
    'a head for each test',
    [
      ...[...head('B-1', '2024-03-12'), 'Fire: high', ...results(4.6, 12), ''],
      ...[...head('B-1', '2024-03-12'), 'Fire: low', ...results(5.9, 8), ''],
      ...[...head('B-2', '2024-03-13'), 'Fire: high', ...results(4.1, 13), ''],
      ...[...head('B-3', '2024-03-14'), 'Fire: high', ...results(4.2, 14), ''],
    ],
  ],
  [
    'titles between heads and results',
    [
      ...[...head('B-1', '2024-03-12'), '', 'HIGH FIRE', ...results(4.6, 12), '', 'LOW FIRE', ...results(5.9, 8), ''],
      ...[...head('B-2', '2024-03-13'), '', 'HIGH FIRE', ...results(4.1, 13), ''],
      ...[...head('B-3', '2024-03-14'), '', 'HIGH FIRE', ...results(4.2, 14), ''],
    ],
  ],
  [
    'titles with the unit above each test',
    [
      ...['Boiler B-1 - high fire', 'Date: 2024-03-12', ...results(4.6, 12), ''],
      ...['Boiler B-1 - low fire', 'Date: 2024-03-12', ...results(5.9, 8), ''],
      ...['Boiler B-2 - high fire', 'Date: 2024-03-13', ...results(4.1, 13), ''],
      ...['Boiler B-3 - high fire', 'Date: 2024-03-14', ...results(4.2, 14), ''],
    ],
  ],
])('printouts with %s, of which one line is lost', (_, lines) => {
  const truth = [
    'B-1 2024-03-12 high 4.6',
    'B-1 2024-03-12 low 5.9',
    'B-2 2024-03-13 high 4.1',
    'B-3 2024-03-14 high 4.2',
  ];
  const isTrue = (unit: string, day: string, fire: string, o2: string): boolean =>
    truth.some((one) => {
      const [trueUnit, trueDay, trueFire, trueO2] = one.split(' ');
      return unit === trueUnit && day === trueDay && ['unnamed', trueFire].includes(fire) && ['', trueO2].includes(o2);
    });
  // A lost title line is a lost unit: what stands below it is told from nothing else (the last row of the table).
  const tried = lines.flatMap((line, at) => (line.startsWith('Boiler B-') ? [] : [[line, at] as const]));
  test.each(tried)('"%s" (%i)', async (_line, at) => {
    const outcome = await readReadings([fileOf('export.txt', lines.toSpliced(at, 1).join('\n'))]);
    if (outcome.status !== 'value') return;
    const { tables } = outcome.value;
    const rows = rowsOf(tables['accepted']);
    const strange = rows.filter(
      (row) => !isTrue(row['unit'] ?? '', row['taken_at'] ?? '', row['fire'] ?? '', row['o2_pct'] ?? ''),
    );
    expect(strange).toEqual([]);
    expect(rows.length + tables['set-aside'].rows).toBeGreaterThanOrEqual(truth.length);
  });
});
