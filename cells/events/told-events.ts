import type { AcceptableSource } from '../../shared/corrections/acceptable.ts';
import * as say from '../../shared/messages/proposals.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** Events that notes tell of and nobody accepted yet. */
export const toldEvents: AcceptableSource = {
  table: 'told-events',
  lists: (table) => (table.rows === 0 ? [] : [{ head: say.eventsHead(), allKey: 'all', entries: entriesOf(table) }]),
};

function entriesOf(table: Table): ReturnType<AcceptableSource['lists']>[number]['entries'] {
  const [unit, event, note] = ['unit', 'event', 'note'].map((name) => textsOf(table, name));
  const on = numbersOf(table, 'on');
  return Array.from({ length: table.rows }, (_, row) => {
    const [of, day, what] = [textAt(unit, row), writeDay(on[row]), textAt(event, row)];
    return {
      key: `${of} ${day} ${what}`,
      words: say.eventWords(of, day, what),
      evidence: say.noteWords(textAt(note, row)),
    };
  });
}
