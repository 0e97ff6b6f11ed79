import type { Blank, CellKind } from '../../shared/cell.ts';
import { noColor, noCondition } from '../../shared/messages/chart.ts';
import { plainName } from '../../shared/messages/lanes.ts';
import { type ChartResult, compute } from './compute.ts';
import { type ChartParameters, readParameters } from './parameters.ts';

/** Kinds whose tables are worth drawing. */
const DRAWN = [
  'readings',
  'register',
  'events',
  'fuel-use',
  'derive',
  'drift',
  'supply',
  'instruments',
  'raise',
  'savings',
  'backcheck',
];

export const kind: CellKind<ChartParameters, ChartResult> = {
  name: 'chart',
  title: 'Chart',
  purpose: 'Draws one column of any table against another.',
  readParameters,
  reads: ({ cell, table }) => (cell === '' ? [] : [{ cell, tables: [table] }]),
  sources: () => [],
  sentence,
  compute,
  describe: ({ answer, figures, remarks, columns }) => ({
    answer,
    tables: [
      {
        table: 'drawn',
        title: 'What is drawn',
        columns: columns.map(({ name, unit }) => ({ column: name, title: plainName(name), unit, digits: 2 })),
      },
    ],
    figures,
    remarks,
  }),
};

const text = (parameter: string, value: string, empty = value): Blank => ({
  parameter,
  text: value === '' ? empty : value,
  entry: { kind: 'text' },
});

function sentence({ cell, table, x, y, color, where }: ChartParameters): (string | Blank)[] {
  return [
    'Draw ',
    text('y', y),
    ' against ',
    text('x', x),
    ', told apart by ',
    text('color', color, noColor()),
    ', from table ',
    text('table', table),
    ' of ',
    { parameter: 'cell', text: cell, entry: { kind: 'cell', kinds: DRAWN } },
    ', for rows with ',
    text('where', where, noCondition()),
    '.',
  ];
}
