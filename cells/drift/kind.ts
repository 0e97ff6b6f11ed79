import type { CellKind, Description, Read, Segment } from '../../shared/cell.ts';
import type { FittedDrift } from '../../shared/foresight/fitted-drift.ts';
import { FLEET_PASSES, passShard } from '../../shared/foresight/fleet-passes.ts';
import { lanesOf } from '../../shared/lanes/lanes-of.ts';
import { driftAnswer } from '../../shared/messages/foresight.ts';
import { airSchema, driftSchema, gasMonthsSchema } from '../../shared/schemas/drift.ts';
import { cellBlank } from '../../shared/sentence/cell-blank.ts';
import { choiceBlank } from '../../shared/sentence/choice-blank.ts';
import { numberBlank } from '../../shared/sentence/number-blank.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { workedColumns } from '../../shared/table/worked-columns.ts';
import { compute, computeFit, type DriftResult } from './compute.ts';
import { judgeShard } from './judge-in-shards.ts';
import { type DriftParameters, readParameters } from './parameters.ts';
import { remarksOf } from './remarks.ts';
import { WORKED } from './working.ts';

const eventsOf = ({ events }: DriftParameters): Read[] => (events === '' ? [] : [{ cell: events }]);

function sentence({ readings, derive, register, horizonDays, quantity, referenceAir }: DriftParameters): Segment[] {
  return [
    'Follow how each fire of each unit in ',
    readingsBlank(readings),
    ' moves between visits, with the values of ',
    cellBlank('derive', 'derived values', derive, ['derive']),
    ' taken ',
    choiceBlank('referenceAir', 'air of the values', String(referenceAir), [
      { value: 'true', label: 'at reference air' },
      { value: 'false', label: 'as measured' },
    ]),
    ', in ',
    choiceBlank('quantity', 'quantity that is followed', quantity, [
      { value: 'as_target', label: 'the quantity of its target' },
      { value: 'o2_pct', label: 'O2' },
      { value: 'co2_pct', label: 'CO2' },
    ]),
    ', and hold it against the bands of ',
    cellBlank('register', 'register', register, ['register']),
    ' for the next ',
    numberBlank('horizonDays', 'days ahead', horizonDays, { minimum: 1, maximum: 3653, unit: 'days' }),
    '.',
  ];
}

function describe(result: DriftResult): Description {
  const { lanes, registered, strangers, outside, leaving, chanceless } = result.told;
  return {
    answer: driftAnswer(lanes, registered, strangers, outside, leaving, chanceless),
    tables: [
      { table: 'drift', title: 'Drift', columns: workedColumns(shownColumns(driftSchema), WORKED) },
      ...(result.tables['air'].rows > 0
        ? [{ table: 'air', title: 'At reference air and as measured', columns: shownColumns(airSchema) }]
        : []),
      ...(result.tables['gas-months'].rows > 0
        ? [{ table: 'gas-months', title: 'Months of the gas zones', columns: shownColumns(gasMonthsSchema) }]
        : []),
    ],
    figures: [],
    remarks: remarksOf(result),
  };
}

export const kind: CellKind<DriftParameters, DriftResult, FittedDrift> = {
  name: 'drift',
  title: 'Drift',
  purpose: 'Follows how high fire and low fire of each unit move between visits, and when each will leave its band.',
  readParameters,
  reads: (parameters) => [
    { cell: parameters.readings, tables: ['accepted'] },
    { cell: parameters.derive, tables: ['derived', 'fuels'] },
    { cell: parameters.register, tables: ['units', 'limits', 'targets'] },
    ...eventsOf(parameters),
  ],
  sources: () => [],
  sentence,
  fit: {
    parameters: ({ readings, derive, register, events, referenceAir }) => ({
      readings,
      derive,
      register,
      events,
      referenceAir,
    }),
    reads: (parameters) => [
      { cell: parameters.readings, tables: ['accepted'] },
      { cell: parameters.derive, tables: ['derived', 'fuels'] },
      { cell: parameters.register, tables: ['units', 'targets'] },
      ...eventsOf(parameters),
    ],
    compute: computeFit,
  },
  compute,
  crews: { judge: judgeShard, [FLEET_PASSES]: passShard },
  describe,
  working: ({ working }, column, row) => working(column, row),
  files: ({ tables }) => [{ name: 'drift.csv', table: tables['drift'] }],
  lanes: ({ tables, units, fitted }, wanted) =>
    lanesOf({ drift: tables['drift'], points: tables['points'], path: tables['path'], units }, wanted, fitted.asOf),
};
