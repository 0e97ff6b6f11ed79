import { describe, expect, test } from 'vitest';
import type { CellResult } from '../../../shared/cell.ts';
import { textColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

const lines = (...text: string[]): string => `${text.join('\n')}\n`;
const DAYS = ['2021-10-04', '2022-10-05', '2023-10-06', '2024-10-07'];

/** Four visits, high then low; a high fire has the hotter flue and the higher manifold pressure. */
const unnamed = (values: (visit: number, isHigh: boolean) => string): string =>
  lines(
    'unit,taken_at,state,o2_pct,flue_C,manifold_Pa',
    ...DAYS.flatMap((day, i) => [
      `B-07,${day}T09:10,as_found,4.1,${values(i, true)}`,
      `B-07,${day}T09:20,as_found,5.9,${values(i, false)}`,
    ]),
  );

describe('fires', () => {
  const plain = unnamed((i, isHigh) => (isHigh ? `${182 + i},870` : `${148 + i},310`));

  test('are proposed from flue temperature and pressure, with the numbers, and not applied', async () => {
    const { tables } = await accepted(plain);
    expect(rowsOf(tables['proposals'])).toMatchObject([
      {
        kind: 'fires',
        unit: 'B-07',
        readings: '8',
        would_be: 'high 4, low 4',
        evidence: expect.stringContaining('manifold pressure 870 against 310 Pa, flue temperature 184 against 150 °C'),
        accepted: 'no',
        source_line: '2',
      },
    ]);
    expect(rowsOf(tables['accepted']).map((row) => row['fire'])).toEqual(Array(8).fill('unnamed'));
  });

  test.each([[['fires']], [['fires:B-07']]])('become the readings’ own when accepted by %j', async (accept) => {
    const { tables } = await accepted(plain, { accept });
    expect(rowsOf(tables['accepted']).map((row) => row['fire'])).toEqual(DAYS.flatMap(() => ['high', 'low']));
    expect(rowsOf(tables['proposals'])[0]['accepted']).toBe('yes');
  });

  test('accepted for another unit, nothing is named', async () => {
    const { tables } = await accepted(plain, { accept: ['fires:B-08'] });
    expect(new Set(rowsOf(tables['accepted']).map((row) => row['fire']))).toEqual(new Set(['unnamed']));
  });

  test('are not proposed where the evidence contradicts itself', async () => {
    const text = unnamed((_, isHigh) => (isHigh ? '182,310' : '148,870'));
    expect(rowsOf((await accepted(text)).tables['proposals'])).toEqual([]);
  });

  test('are not proposed where nothing is apart', async () => {
    const text = unnamed((i) => `${150 + i},${300 + i}`);
    expect(rowsOf((await accepted(text)).tables['proposals'])).toEqual([]);
  });

  test('a lone reading is compared with the other visits', async () => {
    const text = `${plain}B-07,2025-10-07T09:10,as_found,4.4,183,865\n`;
    const { tables } = await accepted(text, { accept: ['fires'] });
    expect(rowsOf(tables['accepted']).at(-1)).toMatchObject({ taken_at: '2025-10-07T09:10', fire: 'high' });
  });

  test('the order within a visit counts where the others agree in it, and is said', async () => {
    const text = `${plain}B-07,2025-10-07T09:10,as_found,4.4,,\nB-07,2025-10-07T09:20,as_found,5.4,,\n`;
    const { tables } = await accepted(text, { accept: ['fires'] });
    expect(
      rowsOf(tables['accepted'])
        .slice(-2)
        .map((row) => row['fire']),
    ).toEqual(['high', 'low']);
    expect(rowsOf(tables['proposals'])[0]['evidence']).toContain('2 readings by the order');
  });

  test('a unit that the register calls single-stage has one fire', async () => {
    const register: CellResult = {
      tables: {
        units: makeTable([
          ['unit', textColumn(['B-07'])],
          ['firing', textColumn(['single'])],
        ]),
      },
    };
    const outcome = await readReadings(
      [fileOf('a.csv', plain)],
      { register: 'register', accept: ['fires'] },
      new Map([['register', register]]),
    );
    if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
    expect(new Set(rowsOf(outcome.value.tables['accepted']).map((row) => row['fire']))).toEqual(new Set(['single']));
  });
});

describe('fuels', () => {
  // CO2max (stoichiometry): natural gas 11.9, propane 13.7, No. 2 oil 15.4; CO2 = CO2max (20.95 - O2) / 20.95.
  const co2 = (max: number, o2: number): string => ((max * (20.95 - o2)) / 20.95).toFixed(1);
  const readings = (of: (i: number) => number): string =>
    lines(
      'unit,taken_at,fire,state,o2_pct,co2_pct',
      ...[3, 4, 5, 6, 4.5, 3.5].map((o2, i) => `B-07,202${i}-03-04,high,as_found,${o2},${co2(of(i), o2)}`),
    );

  test('one fuel is proposed for all readings of the unit', async () => {
    const { tables } = await accepted(
      readings(() => 13.7),
      { accept: ['fuels'] },
    );
    expect(new Set(rowsOf(tables['accepted']).map((row) => row['fuel']))).toEqual(new Set(['propane']));
  });

  test('a unit on two fuels is named reading by reading', async () => {
    const { tables } = await accepted(
      readings((i) => (i < 3 ? 11.9 : 15.4)),
      { accept: ['fuels'] },
    );
    expect(rowsOf(tables['accepted']).map((row) => row['fuel'])).toEqual([
      'natural_gas',
      'natural_gas',
      'natural_gas',
      'no2_oil',
      'no2_oil',
      'no2_oil',
    ]);
  });

  test('a value between the fuels is named by a unit on one fuel, and by none on two, whatever its neighbors burn', async () => {
    const unit = (name: string, co2max: (i: number) => number): string[] =>
      Array.from({ length: 8 }, (_, i) => {
        const o2 = 4 + i / 10;
        return `${name},2024-0${1 + i}-03T09:00,high,as_found,${o2.toFixed(1)},${((co2max(i) * (20.95 - o2)) / 20.95).toFixed(2)}`;
      });
    const text = lines(
      'unit,taken_at,fire,state,o2_pct,co2_pct',
      ...unit('B-01', (i) => (i === 4 ? 12.9 : 11.9)),
      ...unit('B-02', (i) => (i < 3 ? 11.9 : i === 4 ? 12.9 : 15.4)),
    );
    const { tables } = await accepted(text, { accept: ['fuels'] });
    expect(rowsOf(tables['proposals'])).toMatchObject([
      { unit: 'B-01', readings: '8', would_be: 'natural gas 8', source_line: '2' },
      { unit: 'B-02', readings: '7', would_be: 'natural gas 3, no2 oil 4', source_line: '10' },
    ]);
    const fuels = rowsOf(tables['accepted']).map((row) => row['fuel']);
    expect(new Set(fuels.slice(0, 8))).toEqual(new Set(['natural_gas']));
    expect(fuels.slice(8)).toEqual([...Array(3).fill('natural_gas'), 'no2_oil', '', ...Array(3).fill('no2_oil')]);
  });

  test('values between the fuels propose nothing', async () => {
    expect(rowsOf((await accepted(readings(() => 12.9))).tables['proposals'])).toEqual([]);
  });
});

describe('states', () => {
  const visit = (times: readonly string[]): string =>
    lines('unit,taken_at,fire,o2_pct', ...times.map((time, i) => `B-07,2024-03-13${time},high,${4 + i / 10}`));

  test('follow the order of the tests, and only when accepted', async () => {
    const text = visit(['T09:00', 'T09:20', 'T09:40']);
    expect(rowsOf((await accepted(text)).tables['proposals'])[0]).toMatchObject({
      kind: 'states',
      would_be: 'as found 1, as left 1, trial 1',
    });
    const { tables } = await accepted(text, { accept: ['states'] });
    expect(rowsOf(tables['accepted']).map((row) => row['state'])).toEqual(['as_found', 'trial', 'as_left']);
  });

  test('of a day without times follow the lines of the file', async () => {
    const { tables } = await accepted(visit(['', '']), { accept: ['states'] });
    expect(rowsOf(tables['accepted']).map((row) => [row['o2_pct'], row['state']])).toEqual([
      ['4', 'as_found'],
      ['4.1', 'as_left'],
    ]);
    expect(rowsOf(tables['proposals'])[0]['evidence']).toContain('in the file');
  });

  test('of a single reading are never proposed', async () => {
    expect(rowsOf((await accepted(visit(['T09:00']))).tables['proposals'])).toEqual([]);
  });
});

test('what is accepted has to be something that is proposed', async () => {
  expect(await readReadings([], { accept: ['fire'] })).toMatchObject({
    status: 'error',
    message: expect.stringContaining('accept one of fires, states, fuels, units'),
  });
});
