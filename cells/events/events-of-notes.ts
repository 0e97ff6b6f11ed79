import type { Remark } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { toldEventsSchema } from '../../shared/schemas/readings.ts';
import { numbersOf, textAt, textColumn, textsOf } from '../../shared/table/columns.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import { takeTable } from '../../shared/table/take-table.ts';

export interface Event {
  readonly unit: string;
  /** Days. */
  readonly on: number;
  readonly event: string;
  readonly note: string;
}

/** By which one told event is accepted. */
const keyOf = ({ unit, on, event }: Event): string => `${unit} ${writeDay(on)} ${event}`;

/** The events that notes tell of: those that the user accepts, and a table of those still open. Listed ones are neither. */
export function eventsOfNotes(
  told: Table | undefined,
  listed: readonly Event[],
  accept: readonly string[],
): { readonly accepted: readonly Event[]; readonly open: Table } {
  if (!told) return { accepted: [], open: emptyTable() };
  const [unit, event, note] = ['unit', 'event', 'note'].map((name) => textsOf(told, name));
  const on = numbersOf(told, 'on');
  const known = new Set(listed.map(keyOf));
  const accepted: Event[] = [];
  const open: number[] = [];
  for (let row = 0; row < told.rows; row++) {
    const found = { unit: textAt(unit, row), on: on[row], event: textAt(event, row), note: textAt(note, row) };
    const key = keyOf(found);
    if (known.has(key)) continue;
    if (accept.includes('all') || accept.includes(key)) accepted.push(found);
    else open.push(row);
  }
  return { accepted, open: takeTable(told, open) };
}

function emptyTable(): Table {
  return makeTable(
    toldEventsSchema.map(({ name, kind, unit }): [string, Column] => {
      if (kind === 'text') return [name, textColumn([])];
      const values = new Float64Array(0);
      return [name, kind === 'date' ? { kind, values } : { kind: 'number', unit, values }];
    }),
  );
}

/** One sentence for each kind of event that notes tell of and nobody accepted yet. */
export function toldRemarks(open: Table, accepted: number): Remark[] {
  const [unit, event, note] = ['unit', 'event', 'note'].map((name) => textsOf(open, name));
  const on = numbersOf(open, 'on');
  const byEvent = new Map<string, number[]>();
  for (let row = 0; row < open.rows; row++) {
    const rows = byEvent.get(textAt(event, row)) ?? [];
    byEvent.set(textAt(event, row), [...rows, row]);
  }
  const texts = [...byEvent].map(([name, rows]) =>
    say.eventRemark(textAt(unit, rows[0]), writeDay(on[rows[0]]), textAt(note, rows[0]), name, rows.length - 1),
  );
  const remarks: Remark[] = texts.map((text) => ({
    severity: 'note',
    text,
    byCommand: say.acceptEventsByCommand(),
  }));
  return accepted > 0 ? [...remarks, { severity: 'note', text: say.acceptedEvents(accepted) }] : remarks;
}
