import { writeDay } from '../quantities/dates.ts';
import { toldEventsSchema } from '../schemas/readings.ts';
import { numberColumn, numbersOf, textAt, textColumn, textsOf } from '../table/columns.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import { proposedEvent } from './propose-events.ts';

/** An event that a note may tell of; a proposal. */
export interface ToldEvent {
  readonly unit: string;
  /** YYYY-MM-DD. */
  readonly on: string;
  readonly event: string;
  readonly note: string;
  /** Row of the table whose note tells it. */
  readonly row: number;
}

/** One proposal a unit, day and event. */
export function toldEvents(table: Table): readonly ToldEvent[] {
  const notes = textsOf(table, 'note');
  const events = notes.levels.map(proposedEvent);
  if (events.every((event) => event === '')) return [];
  const units = textsOf(table, 'unit');
  const taken = numbersOf(table, 'taken_at');
  const told = new Map<string, ToldEvent>();
  notes.codes.forEach((code, row) => {
    if (code < 0 || events[code] === '') return;
    const [unit, on] = [textAt(units, row), writeDay(taken[row])];
    const key = `${unit}|${on}|${events[code]}`;
    if (!told.has(key)) told.set(key, { unit, on, event: events[code], note: notes.levels[code], row });
  });
  return [...told.values()];
}

/** The same as a table, with where each stands. */
export function toldEventsTable(table: Table, told: readonly ToldEvent[]): Table {
  const [taken, line] = ['taken_at', 'source_line'].map((name) => numbersOf(table, name));
  const file = textsOf(table, 'source_file');
  const values: Readonly<Record<string, Column>> = {
    unit: textColumn(told.map(({ unit }) => unit)),
    on: { kind: 'date', values: Float64Array.from(told, ({ row }) => Math.floor(taken[row])) },
    event: textColumn(told.map(({ event }) => event)),
    note: textColumn(told.map(({ note }) => note)),
    source_file: textColumn(told.map(({ row }) => textAt(file, row))),
    source_line: numberColumn(
      '1',
      Float64Array.from(told, ({ row }) => line[row]),
    ),
  };
  return makeTable(toldEventsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}
