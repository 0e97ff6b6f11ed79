import { writeDay } from '../quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { proposedEvent } from './propose-events.ts';

/** An event that a note may tell of; a proposal. */
export interface ToldEvent {
  readonly unit: string;
  readonly on: string;
  readonly event: string;
  readonly note: string;
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
    told.set(`${unit}|${on}|${events[code]}`, { unit, on, event: events[code], note: notes.levels[code] });
  });
  return [...told.values()];
}
