import type { CellKind, Description, Read, Remark, Segment } from '../../shared/cell.ts';
import { FLEET_PASSES, passShard } from '../../shared/foresight/fleet-passes.ts';
import {
  lowPressureRule,
  notNormalized,
  supplyAnswer,
  supplyFirst,
  unknownLanes,
} from '../../shared/messages/foresight.ts';
import { countRegistered } from '../../shared/readings/count-registered.ts';
import { supplySchema } from '../../shared/schemas/supply.ts';
import { cellBlank } from '../../shared/sentence/cell-blank.ts';
import { numberBlank } from '../../shared/sentence/number-blank.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { shareBlank } from '../../shared/sentence/share-blank.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { workedColumns } from '../../shared/table/worked-columns.ts';
import { compute, computeFit, type SupplyFit, type SupplyResult } from './compute.ts';
import { readParameters, type SupplyParameters } from './parameters.ts';
import { WORKED } from './working.ts';

const eventsOf = ({ events }: SupplyParameters): Read[] => (events === '' ? [] : [{ cell: events }]);

function sentence(parameters: SupplyParameters): Segment[] {
  const { readings, register, inputExponent, horizonDays, lookAheadYears, falseDiscoveryRate } = parameters;
  return [
    'Follow the drop of gas pressure (static less running at the highest fire) in ',
    readingsBlank(readings),
    ', brought to the rated heat input by the power ',
    numberBlank('inputExponent', 'power of the heat input', inputExponent, { minimum: 0, maximum: 3, unit: '' }),
    ', hold it against the limits of ',
    cellBlank('register', 'register', register, ['register']),
    ' for the next ',
    numberBlank('horizonDays', 'days ahead', horizonDays, { minimum: 1, maximum: 3653, unit: 'days' }),
    ', and call a drop growing where its limit is reached within ',
    numberBlank('lookAheadYears', 'years to look ahead', lookAheadYears, { minimum: 0.1, maximum: 20, unit: 'years' }),
    ', with at most ',
    shareBlank('falseDiscoveryRate', 'share of false discoveries', falseDiscoveryRate, 0.001, 0.5),
    ' false discoveries.',
  ];
}

function remarksOf({ rows }: SupplyResult): Remark[] {
  const remarks: Remark[] = [];
  const unknown = rows.filter(({ verdict }) => verdict === 'unknown');
  if (unknown.length > 0) remarks.push({ severity: 'warning', text: unknownLanes(unknown.length, unknown[0].reason) });
  const ruled = rows.filter(({ limitSource }) => limitSource === 'low_pressure_rule').length;
  if (ruled > 0) remarks.push({ severity: 'warning', text: lowPressureRule(ruled) });
  const raw = rows.filter(({ used, normalized }) => used > 0 && normalized === 0).length;
  if (raw > 0) remarks.push({ severity: 'note', text: notNormalized(raw) });
  remarks.push({ severity: 'note', text: supplyFirst() });
  return remarks;
}

function describe(result: SupplyResult): Description {
  const { registered, strangers } = countRegistered(
    result.rows.map(({ unit }) => unit),
    result.register,
  );
  const count = (verdict: string): number => result.rows.filter((row) => row.verdict === verdict).length;
  return {
    answer: supplyAnswer(registered, strangers, count('over'), count('growing'), count('within'), count('unknown')),
    tables: [{ table: 'supply', title: 'Gas supply', columns: workedColumns(shownColumns(supplySchema), WORKED) }],
    figures: [],
    remarks: remarksOf(result),
  };
}

export const kind: CellKind<SupplyParameters, SupplyResult, SupplyFit> = {
  name: 'supply',
  title: 'Gas supply',
  purpose: 'Follows each unit’s drop of gas pressure at high fire and says whether it grows toward its limit.',
  readParameters,
  reads: (parameters) => [
    { cell: parameters.readings, tables: ['accepted'] },
    { cell: parameters.derive, tables: ['derived'] },
    { cell: parameters.register, tables: ['units', 'supply-limits'] },
    ...eventsOf(parameters),
  ],
  sources: () => [],
  sentence,
  fit: {
    parameters: ({ readings, derive, register, events, inputExponent }) => ({
      readings,
      derive,
      register,
      events,
      inputExponent,
    }),
    reads: (parameters) => [
      { cell: parameters.readings, tables: ['accepted'] },
      { cell: parameters.derive, tables: ['derived'] },
      { cell: parameters.register, tables: ['units'] },
      ...eventsOf(parameters),
    ],
    compute: computeFit,
  },
  compute,
  crews: { [FLEET_PASSES]: passShard },
  describe,
  working: ({ working }, column, row) => working(column, row),
  files: ({ tables }) => [{ name: 'supply.csv', table: tables['supply'] }],
};
