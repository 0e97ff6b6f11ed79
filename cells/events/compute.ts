import type { CellContext, CellResult, Inputs, Remark, SourceFile } from '../../shared/cell.ts';
import type { EventEntry } from '../../shared/events/event-entry.ts';
import * as say from '../../shared/messages/import.ts';
import { nearestName } from '../../shared/names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { columnsTable } from '../../shared/readings/columns-table.ts';
import { EVENT_NAMES, EVENT_VOCABULARY, EVENT_WORDS } from '../../shared/readings/event-vocabulary.ts';
import { plainWords } from '../../shared/readings/plain-words.ts';
import { type CellFault, readTable, type SmallRow } from '../../shared/readings/read-table.ts';
import { registeredUnits } from '../../shared/readings/registered-units.ts';
import { faultTable } from '../../shared/readings/told-faults.ts';
import { textColumn } from '../../shared/table/columns.ts';
import { makeTable, type Table } from '../../shared/table/table.ts';
import { type Event, eventsOfNotes, toldRemarks } from './events-of-notes.ts';
import type { EventsParameters } from './parameters.ts';

/** Tables: events, sorted by unit and day; told-events (told by notes and not accepted); faults; columns. */
export interface EventsResult extends CellResult {
  readonly faults: readonly CellFault[];
  readonly notes: readonly string[];
  readonly remarks: readonly Remark[];
}

const NEEDS = {
  vocabulary: EVENT_VOCABULARY,
  fields: ['unit', 'on', 'event'],
  words: 'the unit, the day and the event',
};

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
  const told = parameters.notes === '' ? undefined : inputs.get(parameters.notes)?.tables['told-events'];
  const { entries } = parameters;
  if (files.length === 0 && parameters.notes === '' && entries.length === 0) return fail(say.noFiles('events'));
  const read = await readTable(
    files,
    { ...NEEDS, dateOrder: parameters.dateOrder, profiles: parameters.profiles },
    context,
  );
  if (read.status !== 'value') return read;
  const { rows, faults } = read.value;
  const units = parameters.register === '' ? undefined : inputs.get(parameters.register)?.tables['units'];
  const listed = withEntries(listedEvents(rows, faults, units), entries, registeredUnits(units, faults));
  const { accepted, open } = eventsOfNotes(told, listed, parameters.accept);
  return succeed({
    tables: {
      events: eventTable([...listed, ...accepted]),
      'told-events': open,
      faults: faultTable(faults),
      columns: columnsTable(read.value.plans),
    },
    faults,
    notes: read.value.notes,
    remarks: toldRemarks(open, accepted.length),
  });
}

function listedEvents(rows: readonly SmallRow[], faults: CellFault[], units: Table | undefined): Event[] {
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
  return events;
}

/** Events of files and of the notebook; what both know counts once, with the note of the file or else of the notebook. */
function withEntries(
  listed: readonly Event[],
  entries: readonly EventEntry[],
  spell: ReturnType<typeof registeredUnits>,
): Event[] {
  const all = [...listed];
  entries.forEach(({ unit, on, event, note }, place) => {
    const noted = { unit: spell(unit, { file: IN_NOTEBOOK, line: place + 1 }), on: readIsoDate(on), event, note };
    const same = all.findIndex((one) => one.unit === noted.unit && one.on === noted.on && one.event === event);
    if (same < 0) all.push(noted);
    else if (all[same].note === '') all[same] = noted;
  });
  return all;
}

/** Stands for a file where a fault is told of an entry. */
const IN_NOTEBOOK = 'the notebook';

const at = ({ file, line }: { file: string; line: number }): { file: string; line: number } => ({ file, line });

function eventTable(events: readonly Event[]): Table {
  const sorted = [...events].sort((a, b) => order(a.unit, b.unit) || a.on - b.on || order(a.event, b.event));
  return makeTable([
    ['unit', textColumn(sorted.map(({ unit }) => unit))],
    ['on', { kind: 'date', values: Float64Array.from(sorted, ({ on }) => on) }],
    ['event', textColumn(sorted.map(({ event }) => event))],
    ['note', textColumn(sorted.map(({ note }) => note))],
  ]);
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
