import type { Blank, CellKind, Read } from '../../shared/cell.ts';
import { airName, counterfactualName } from '../../shared/messages/savings.ts';
import { savingsSchema } from '../../shared/schemas/savings.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { compute, type SavingsResult } from './compute.ts';
import { AIRS, COUNTERFACTUALS, readParameters, type SavingsParameters } from './parameters.ts';

export const kind: CellKind<SavingsParameters, SavingsResult> = {
  name: 'savings',
  title: 'Savings',
  purpose: 'Says what the last tune-up of each unit saved, with an interval, and whether it can be told from nothing.',
  readParameters,
  reads,
  sources: () => [],
  sentence,
  compute,
  describe: ({ answer, remarks }) => ({
    answer,
    tables: [{ table: 'savings', title: 'Savings', columns: shownColumns(savingsSchema) }],
    figures: [],
    remarks,
  }),
  files: ({ tables }) => [{ name: 'savings.csv', table: tables['savings'] }],
};

function reads({ readings, derive, register, drift, fuelUse }: SavingsParameters): Read[] {
  const of = (cell: string, ...tables: string[]): Read[] => (cell === '' ? [] : [{ cell, tables }]);
  const ifThere = (cell: string, table: string): Read[] => of(cell, table).map((read) => ({ ...read, optional: true }));
  return [
    ...of(readings, 'accepted'),
    ...of(derive, 'derived'),
    ...of(register, 'economics', 'planning'),
    ...ifThere(drift, 'drift'),
    ...ifThere(fuelUse, 'use'),
  ];
}

const cell = (parameter: string, name: string, kind: string): Blank => ({
  parameter,
  text: name === '' ? `no ${kind}` : name,
  entry: { kind: 'cell', kinds: [kind], optional: true },
});
/** There is nothing to say without readings. */
const readingsCell = (name: string): Blank => ({
  parameter: 'readings',
  text: name,
  entry: { kind: 'cell', kinds: ['readings', 'corrections'] },
});
const choice = (
  parameter: string,
  value: string,
  options: readonly string[],
  label: (value: string) => string,
): Blank => ({
  parameter,
  text: label(value),
  entry: { kind: 'choice', options: options.map((option) => ({ value: option, label: label(option) })) },
});

function sentence(parameters: SavingsParameters): (string | Blank)[] {
  const { readings, derive, register, drift, fuelUse, counterfactual, air } = parameters;
  return [
    'Compare found with left at the last visit of each unit and fuel that has both, ',
    choice('air', air, AIRS, airName),
    ', in gross efficiency weighted by the fuel burnt at each fire, against ',
    choice('counterfactual', counterfactual, COUNTERFACTUALS, counterfactualName),
    '; reading ',
    readingsCell(readings),
    ', ',
    cell('derive', derive, 'derive'),
    ', ',
    cell('register', register, 'register'),
    ', ',
    cell('drift', drift, 'drift'),
    ' and ',
    cell('fuelUse', fuelUse, 'fuel-use'),
    '.',
  ];
}
