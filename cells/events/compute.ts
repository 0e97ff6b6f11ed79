import type { CellContext, CellResult, Inputs, SourceFile } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { nearestName } from '../../shared/names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { EVENT_NAMES, EVENT_VOCABULARY, EVENT_WORDS } from '../../shared/readings/event-vocabulary.ts';
import { plainWords } from '../../shared/readings/plain-words.ts';
import { type CellFault, readTable } from '../../shared/readings/read-table.ts';
import { registeredUnits } from '../../shared/readings/registered-units.ts';
import { faultTable } from '../../shared/readings/told-faults.ts';
import { textColumn } from '../../shared/table/columns.ts';
import { makeTable } from '../../shared/table/table.ts';
import type { EventsParameters } from './parameters.ts';

/** Tables: events, sorted by unit and day; faults. */
export interface EventsResult extends CellResult {
  readonly faults: readonly CellFault[];
  readonly notes: readonly string[];
}

interface Event {
  readonly unit: string;
  readonly on: number;
  readonly event: string;
  readonly note: string;
}

export async function compute(
  parameters: EventsParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<EventsResult>> {
  const files: SourceFile[] = [];
  for (const key of parameters.files) {
    const file = context.source(key);
    if (!file) return fail(say.lostFile('events', key));
    files.push(file);
  }
  if (files.length === 0) return fail(say.noFiles('events'));
  const needs = {
    vocabulary: EVENT_VOCABULARY,
    fields: ['unit', 'on', 'event'],
    words: 'the unit, the day and the event',
  };
  const read = await readTable(
    files,
    { ...needs, dateOrder: parameters.dateOrder, profiles: parameters.profiles },
    context,
  );
  if (read.status !== 'value') return read;
  const { rows, faults } = read.value;
  const units = parameters.register === '' ? undefined : inputs.get(parameters.register)?.tables['units'];
  const spell = registeredUnits(units, faults);
  const events: Event[] = [];
  for (const row of rows) {
    const [unit, written, on] = [row.text('unit'), row.text('event'), row.date('on')];
    const event = EVENT_WORDS.get(plainWords(written));
    if (event === undefined) {
      const nearest = nearestName(plainWords(written).replaceAll(' ', '_'), EVENT_NAMES);
      faults.push({ ...at(row), reason: say.unknownEvent(written, nearest, EVENT_NAMES.join(', ')), row: true });
    } else if (unit === '') faults.push({ ...at(row), reason: say.noUnitRow(), row: true });
    else if (Number.isNaN(on)) faults.push({ ...at(row), reason: say.noEventDate(), row: true });
    else events.push({ unit: spell(unit, row), on, event, note: row.text('note') });
  }
  return succeed({
    tables: { events: eventTable(events), faults: faultTable(faults) },
    faults,
    notes: read.value.notes,
  });
}

const at = ({ file, line }: { file: string; line: number }): { file: string; line: number } => ({ file, line });

function eventTable(events: readonly Event[]): CellResult['tables'][string] {
  const sorted = [...events].sort((a, b) => order(a.unit, b.unit) || a.on - b.on || order(a.event, b.event));
  return makeTable([
    ['unit', textColumn(sorted.map(({ unit }) => unit))],
    ['on', { kind: 'date', values: Float64Array.from(sorted, ({ on }) => on) }],
    ['event', textColumn(sorted.map(({ event }) => event))],
    ['note', textColumn(sorted.map(({ note }) => note))],
  ]);
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
