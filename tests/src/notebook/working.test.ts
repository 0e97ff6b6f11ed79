import { expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import type { SourceFile } from '../../../shared/cell.ts';
import type { ShownWorking } from '../../../shared/working/shown-working.ts';
import { Session } from '../../../src/notebook/session.ts';
import { reportInput } from '../../../src/notebook/written-files.ts';
import { hashBytes } from '../../../src/storage/hash-bytes.ts';

const file = async (name: string, text: string, hash?: string): Promise<[string, SourceFile]> => {
  const bytes = new TextEncoder().encode(text);
  async function* once(): AsyncGenerator<Uint8Array> {
    yield bytes;
  }
  return [
    name,
    {
      ...{ name, size: bytes.length, hash: hash ?? (await hashBytes(once())) },
      open: once,
    },
  ];
};

async function sessionOf(
  given: readonly Promise<[string, SourceFile]>[],
  cells: readonly object[] = [],
): Promise<Session> {
  const files = await Promise.all(given);
  const session = new Session(catalogue);
  session.open(
    {
      ...{ format: 'between-visits-notebook', version: 1, title: 'T', as_of: '2026-06-01', settings: {}, data: [] },
      cells: [
        { name: 'readings', kind: 'readings', parameters: { files: files.map(([name]) => name), register: '' } },
        { name: 'derive', kind: 'derive', parameters: { register: '' } },
        ...cells,
      ],
    } as Parameters<Session['open']>[0],
    new Map(files),
  );
  await session.calculate();
  for (const { name, message, question } of session.states())
    if (message !== '' || question) throw new Error(`${name}: ${message}${question?.message ?? ''}`);
  return session;
}

async function workingOf(session: Session, column: string, row = 0, cell = 'derive'): Promise<ShownWorking> {
  const found = await session.workingToFile({ cell, column, row });
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  return found.value;
}

test('a number leads to the line of its file, the columns that were used, and what stands in them', async () => {
  const session = await sessionOf([
    file('a.csv', 'Made by hand\n\nunit;date;fire;state;O2 [%];co_ppm\nB-1;2025-01-10;high;as_found;5,0;87\n'),
  ]);
  const { readings, sources } = await workingOf(session, 'co_air_free_ppm');
  expect(readings).toHaveLength(1);
  expect(readings[0].origin?.text).toBe('B-1;2025-01-10;high;as_found;5,0;87');
  expect(readings[0].origin?.cells.map(({ position, text }) => [position, text])).toEqual([
    [5, '5,0'],
    [6, '87'],
  ]);
  expect(sources.map(({ key }) => key)).toContain('airFreeCo');
});

test('several readings on a line each lead to their own columns', async () => {
  const session = await sessionOf([
    file('wide.csv', 'unit,taken_at,state,high_o2_pct,low_o2_pct\nB-1,2025-01-10,as_found,4.1,6.2\n'),
  ]);
  const cellOf = async (row: number): Promise<readonly (readonly [string, string])[]> =>
    (await workingOf(session, 'lambda', row)).readings.flatMap(
      ({ fire, origin }) => origin?.cells.map(({ text }) => [fire, text] as const) ?? [],
    );
  expect([...(await cellOf(0)), ...(await cellOf(1))]).toEqual([
    ['high', '4.1'],
    ['low', '6.2'],
  ]);
});

test('a quoted field over two lines is shown whole; a printout by its name and value', async () => {
  const session = await sessionOf([
    file('q.csv', 'unit,taken_at,fire,o2_pct,note\nB-1,2025-01-10,high,5.5,"one\ntwo"\nB-2,2025-01-10,high,6.5,\n'),
    file(
      'p.txt',
      'Unit : B-3\nDate : 2025-02-03\nFire : High fire\nOxygen : 3.8 %\nCO, as measured : 12 ppm\nFlue temperature : 180 °C\n\nUnit : B-4\nDate : 2025-02-03\nFire : High fire\nOxygen : 4.8 %\nCO, as measured : 13 ppm\nFlue temperature : 181 °C\n',
    ),
  ]);
  const quoted = (await workingOf(session, 'lambda', 0)).readings[0];
  expect(quoted.origin?.text).toBe('B-1,2025-01-10,high,5.5,"one\ntwo"');
  const printed = (await workingOf(session, 'lambda', 3)).readings[0];
  expect(printed.unit).toBe('B-4');
  expect(printed.origin?.cells).toEqual([{ field: 'o2_pct', head: 'Oxygen', position: Number.NaN, text: '4.8 %' }]);
  expect(printed.origin?.text.split('\n')[0]).toBe('Unit : B-4');
});

test('a file that is no longer what was read tells nothing of its lines', async () => {
  const text = 'unit,taken_at,fire,o2_pct\nB-1,2025-01-10,high,5\n';
  const session = await sessionOf([file('a.csv', text, 'another')]);
  const [reading] = (await workingOf(session, 'lambda')).readings;
  expect(reading).toMatchObject({ file: 'a.csv', line: 2 });
  expect(reading.origin).toMatchObject({ text: '', cells: [] });
});

test('the working of a raised CO ends in what the limit is exceeded by, and leads on to the derived number', async () => {
  const session = await sessionOf(
    [file('a.csv', 'unit,taken_at,fire,state,o2_pct,co_ppm\nB-1,2026-05-10,high,as_found,8.2,460\n')],
    [
      {
        ...{ name: 'raise', kind: 'raise' },
        parameters: { register: '', drift: '', supply: '', instruments: '' },
      },
    ],
  );
  const { steps, inputs, readings } = await workingOf(session, 'evidence', 0, 'raise');
  // 460 x 20.9 / (20.9 - 8.2) = 757.008; common practice takes 400 ppm air-free as the limit.
  expect(steps.map(({ value }) => value)).toEqual([expect.closeTo(357.008, 3)]);
  expect(steps[0].numbers).toBe('ΔCO = 757.01 ppm − 400 ppm');
  expect(inputs[0].from).toEqual({ cell: 'derive', column: 'co_air_free_ppm', row: 0 });
  expect(readings[0]).toMatchObject({ file: 'a.csv', line: 2 });
  // The report follows the same figure down to the same reading.
  const { workings } = reportInput(session);
  expect(workings.map(({ row, working, rests }) => [row, working.name, rests.map(({ name }) => name)])).toEqual([
    [0, 'co_high', ['co_air_free_ppm']],
  ]);
  expect(workings[0].rests[0].readings[0]).toMatchObject({ file: 'a.csv', line: 2 });
});

test('a corrected reading says what was put right between the line of its file and the number, to those who read it so', async () => {
  const row = { unit: 'B-1', taken_at: '2025-01-10', fire: 'high', state: 'as_found', fuel: '', nth: 1 };
  const made = { initials: 'QM', made_on: '2026-01-02', lifted: false };
  const session = await sessionOf(
    [file('a.csv', 'unit,taken_at,fire,state,o2_pct,co_ppm\nB-1,2025-01-10,high,as_found,50,87\n')],
    [
      {
        ...{ name: 'corrections', kind: 'corrections' },
        parameters: {
          corrections: [
            { ...made, id: 'c-1', action: 'change', row, column: 'o2_pct', value: '5', reason: 'point left out' },
            {
              ...made,
              id: 'c-2',
              action: 'change',
              row,
              column: 'flue_C',
              value: '180',
              reason: 'read from the print',
            },
          ],
        },
      },
      { name: 'put-right', kind: 'derive', parameters: { register: '', readings: 'corrections' } },
    ],
  );
  const { readings, steps } = await workingOf(session, 'co_air_free_ppm', 0, 'put-right');
  expect(readings[0].origin?.cells.map(({ text }) => text)).toEqual(['50', '87']);
  expect(readings[0].amended).toEqual([
    'O2 of B-1, 2025-01-10, high fire, as found is 5 % (QM, 2026-01-02: point left out)',
  ]);
  // 87 x 20.9 / (20.9 - 5) = 114.358, of the corrected O2.
  expect(steps.at(-1)?.value).toBeCloseTo(114.358, 3);
  expect((await workingOf(session, 'co_air_free_ppm')).readings[0].amended).toEqual([]);
});

test('what has no working is refused in one sentence', async () => {
  const session = await sessionOf([file('a.csv', 'unit,taken_at,fire,o2_pct\nB-1,2025-01-10,high,5\n')]);
  for (const [cell, column, words] of [
    ['readings', 'o2_pct', 'no numbers that show their working'],
    ['nowhere', 'o2_pct', 'no numbers that show their working'],
    ['derive', 'lamda', 'did you mean lambda?'],
  ]) {
    const found = session.working({ cell, column, row: 0 });
    expect(found).toMatchObject({ status: 'error', message: expect.stringContaining(words) });
  }
});
