import type { Blank, CellKind, Description, Read, Segment } from '../../shared/cell.ts';
import { airName, counterfactualName } from '../../shared/messages/savings.ts';
import { savingsSchema } from '../../shared/schemas/savings.ts';
import { cellBlank } from '../../shared/sentence/cell-blank.ts';
import { choiceBlank } from '../../shared/sentence/choice-blank.ts';
import { readIfThere } from '../../shared/sentence/read-if-there.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { describeTable } from '../../shared/table/describe-table.ts';
import { workedColumns } from '../../shared/table/worked-columns.ts';
import { compute, type SavingsResult } from './compute.ts';
import { AIRS, COUNTERFACTUALS, readParameters, type SavingsParameters } from './parameters.ts';
import { WORKED } from './working.ts';

export const kind: CellKind<SavingsParameters, SavingsResult> = {
  name: 'savings',
  title: 'Savings',
  purpose: 'Says what the last tune-up of each unit saved, with an interval, and whether it can be told from nothing.',
  readParameters,
  reads,
  sources: () => [],
  settings: ['referenceAirC', 'currency'],
  sentence,
  details,
  compute,
  describe: (result) => withColumns(describeTable('savings', 'Savings', savingsSchema)(result), result.currency),
  working: ({ working }, column, row) => working(column, row),
  files: ({ tables }) => [{ name: 'savings.csv', table: tables['savings'] }],
};

/** Marks the columns that show their working, and names the money of those that are in it. */
function withColumns(description: Description, currency: string): Description {
  const tables = description.tables.map((table) => ({
    ...table,
    columns: workedColumns(table.columns, WORKED).map((shown) =>
      shown.column.startsWith('cost_') ? { ...shown, unit: currency } : shown,
    ),
  }));
  return { ...description, tables };
}

function reads({ readings, derive, register, drift, fuelUse }: SavingsParameters): Read[] {
  return [
    ...readOf(readings, 'accepted'),
    ...readOf(derive, 'derived', 'fuels'),
    ...readOf(register, 'economics', 'planning'),
    ...readIfThere(drift, 'drift'),
    ...readIfThere(fuelUse, 'use'),
  ];
}

const named = (values: readonly string[], name: (value: string) => string): { value: string; label: string }[] =>
  values.map((value) => ({ value, label: name(value) }));

function sentence({ counterfactual, air }: SavingsParameters): Segment[] {
  return [
    'Compare found with left at the last visit of each unit and fuel that has both, ',
    choiceBlank('air', 'air of the comparison', air, named(AIRS, airName)),
    ', in gross efficiency weighted by the fuel burnt at each fire, against ',
    choiceBlank(
      'counterfactual',
      'what it is held against',
      counterfactual,
      named(COUNTERFACTUALS, counterfactualName),
    ),
    '.',
  ];
}

function details({ readings, derive, register, drift, fuelUse }: SavingsParameters): Segment[] {
  const other = (parameter: string, label: string, name: string, kind = parameter): Blank =>
    cellBlank(parameter, label, name, [kind], { optional: true });
  return [
    'Reads ',
    readingsBlank(readings),
    ', ',
    other('derive', 'derived values', derive),
    ', ',
    other('register', 'register', register),
    ', ',
    other('drift', 'drift', drift),
    ' and ',
    other('fuelUse', 'fuel use', fuelUse, 'fuel-use'),
    '.',
  ];
}
