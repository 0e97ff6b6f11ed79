import { expect, test } from 'vitest';
import type { EventsResult } from '../../../cells/events/compute.ts';
import { kind } from '../../../cells/events/kind.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { textColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { contextOf, fileOf } from '../../shared/readings/file-of.ts';
import { rowsOf } from '../../shared/readings/read-readings.ts';

async function read(...lines: string[]): Promise<Outcome<EventsResult>> {
  const file = fileOf('happened.csv', `${lines.join('\n')}\n`);
  const parameters = kind.readParameters({ files: [file.name], register: 'register' });
  if (parameters.status !== 'value') return parameters;
  const register = { tables: { units: makeTable([['unit', textColumn(['B-07'])]]) } };
  return kind.compute(parameters.value, new Map([['register', register]]), contextOf([file]), undefined);
}

test('events in plain words, of units spelled otherwise, sorted', async () => {
  const outcome = await read(
    'Boiler,Date,Event,Note',
    'b 07,2024-06-03,Gas valve,',
    'B-07,3/14/2023,new boiler,"id kept, new plate"',
    'Z-1,2024-01-01,nettoyage,',
  );
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  expect(rowsOf(outcome.value.tables['events'])).toEqual([
    { unit: 'B-07', on: '2023-03-14', event: 'replaced', note: 'id kept, new plate' },
    { unit: 'B-07', on: '2024-06-03', event: 'gas_valve', note: '' },
    { unit: 'Z-1', on: '2024-01-01', event: 'cleaned', note: '' },
  ]);
});

test('an event nobody knows, a row without a day: set aside with a reason, the others count', async () => {
  const strange = await read('unit,on,event', 'B-07,2024-06-03,replacd', 'B-07,2024-06-04,cleaned');
  if (strange.status !== 'value') throw new Error(JSON.stringify(strange));
  expect(strange.value.tables['events'].rows).toBe(1);
  expect(rowsOf(strange.value.tables['faults'])).toEqual([
    {
      source_file: 'happened.csv',
      source_line: '2',
      reason: expect.stringMatching(/"replacd" \(did you mean "replaced"\?\)/),
    },
  ]);
  expect(kind.describe(strange.value).answer).toBe('1 event of 1 unit; 1 row set aside.');
  const undated = await read('unit,on,event', 'B-07,,cleaned', 'B-07,2024-06-03,cleaned');
  expect(undated.status === 'value' && undated.value.faults.map(({ line }) => line)).toEqual([2]);
});

test('dates that could be read both ways are asked', async () => {
  expect((await read('unit,on,event', 'B-07,3/4/2024,cleaned')).status).toBe('question');
});

test('events noted in the notebook stand beside those of files, each once', async () => {
  const file = fileOf(
    'happened.csv',
    'unit,on,event,note\nB-07,2024-06-03,gas valve,\nB-07,2023-05-11,cleaned,brushed\n',
  );
  const entries = [
    { unit: 'b 07', on: '2024-06-03', event: 'gas_valve', note: 'stuck' },
    { unit: 'B-07', on: '2023-05-11', event: 'cleaned', note: 'another note' },
    { unit: 'B-07', on: '2025-01-09', event: 'laid_up' },
  ];
  const parameters = kind.readParameters({ files: [file.name], register: 'register', entries });
  if (parameters.status !== 'value') throw new Error(JSON.stringify(parameters));
  const register = { tables: { units: makeTable([['unit', textColumn(['B-07'])]]) } };
  const outcome = await kind.compute(parameters.value, new Map([['register', register]]), contextOf([file]), undefined);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  expect(rowsOf(outcome.value.tables['events'])).toEqual([
    { unit: 'B-07', on: '2023-05-11', event: 'cleaned', note: 'brushed' },
    { unit: 'B-07', on: '2024-06-03', event: 'gas_valve', note: 'stuck' },
    { unit: 'B-07', on: '2025-01-09', event: 'laid_up', note: '' },
  ]);
  const bare = kind.readParameters({ entries: entries.slice(2), register: '' });
  const alone = bare.status === 'value' && (await kind.compute(bare.value, new Map(), contextOf([]), undefined));
  expect(alone && alone.status === 'value' && alone.value.tables['events'].rows).toBe(1);
});

test.each([
  ['no unit', [{ on: '2024-01-01', event: 'cleaned' }], /unit of entry 1/],
  ['no day', [{ unit: 'B-07', on: '2024-02-30', event: 'cleaned' }], /on of entry 1/],
  ['a strange event', [{ unit: 'B-07', on: '2024-02-03', event: 'blessed' }], /event of entry 1.*blessed/],
  ['no list', { unit: 'B-07' }, /must be a list/],
  [
    'one twice',
    [
      { unit: 'B-07', on: '2024-02-03', event: 'cleaned' },
      { unit: 'b07', on: '2024-02-03', event: 'cleaned' },
    ],
    /entry 2.*twice/,
  ],
])('a noted event with %s is refused in one sentence', (_, entries, sentence) => {
  const read = kind.readParameters({ entries });
  expect(read).toMatchObject({ status: 'error', message: expect.stringMatching(sentence) });
});
