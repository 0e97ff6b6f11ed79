import type { CellKind, Segment } from '../../shared/cell.ts';
import { noColor, noCondition } from '../../shared/messages/chart.ts';
import { columnTitle } from '../../shared/schemas/column-title.ts';
import { cellBlank } from '../../shared/sentence/cell-blank.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import { textBlank } from '../../shared/sentence/text-blank.ts';
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
  reads: ({ cell, table }) => readOf(cell, table),
  sources: () => [],
  sentence,
  compute,
  describe: ({ answer, figures, remarks, columns }) => ({
    answer,
    tables: [
      {
        table: 'drawn',
        title: 'What is drawn',
        columns: columns.map(({ name, unit }) => ({ column: name, title: columnTitle(name), unit, digits: 2 })),
      },
    ],
    figures,
    remarks,
  }),
};

function sentence({ cell, table, x, y, color, where }: ChartParameters): Segment[] {
  return [
    'Draw ',
    textBlank('y', 'column of the upright axis', columnTitle(y)),
    ' against ',
    textBlank('x', 'column of the level axis', columnTitle(x)),
    ', told apart by ',
    textBlank('color', 'column that tells marks apart', color === '' ? noColor() : columnTitle(color)),
    ', from table ',
    textBlank('table', 'table drawn from', table),
    ' of ',
    cellBlank('cell', 'cell', cell, DRAWN),
    ', for rows with ',
    textBlank('where', 'condition on the rows', where === '' ? noCondition() : where),
    '.',
  ];
}
