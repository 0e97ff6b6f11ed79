import type { AcceptableSource } from '../../shared/corrections/acceptable.ts';
import * as say from '../../shared/messages/proposals.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

const KINDS = ['units', 'fuels', 'fires', 'states'] as const;

/** What evidence proposes and nobody accepted yet, a list a kind. */
export const proposedNames: AcceptableSource = {
  table: 'proposals',
  filter: { column: 'accepted', text: 'no' },
  lists: (table) =>
    table.rows === 0
      ? []
      : KINDS.map((kind) => ({ head: say.kindHead(kind), allKey: kind, entries: entriesOf(table, kind) })),
};

function entriesOf(table: Table, wanted: string): ReturnType<AcceptableSource['lists']>[number]['entries'] {
  const [kind, unit, wouldBe, evidence] = ['kind', 'unit', 'would_be', 'evidence'].map((name) => textsOf(table, name));
  const readings = numbersOf(table, 'readings');
  return Array.from({ length: table.rows }, (_, row) => row)
    .filter((row) => textAt(kind, row) === wanted)
    .map((row) => {
      const of = textAt(unit, row);
      return {
        key: `${wanted}:${of}`,
        words: say.kindWords(wanted, of, readings[row], textAt(wouldBe, row)),
        evidence: textAt(evidence, row),
      };
    });
}
