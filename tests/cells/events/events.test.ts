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
