import type { Blank, CellKind, Read } from '../../shared/cell.ts';
import { lanesOf } from '../../shared/lanes/lanes-of.ts';
import { basisName } from '../../shared/messages/raise.ts';
import { raisedSchema } from '../../shared/schemas/raised.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { compute, type RaiseResult } from './compute.ts';
import { type RaiseParameters, readParameters } from './parameters.ts';

export const kind: CellKind<RaiseParameters, RaiseResult> = {
  name: 'raise',
  title: 'Raised units',
  purpose: 'Says which unit to visit, why, how sure it is, and what to check first.',
  readParameters,
  reads,
  sources: () => [],
  sentence,
  compute,
  describe: ({ answer, remarks }) => ({
    answer,
    tables: [{ table: 'raised', title: 'Raised units', columns: shownColumns(raisedSchema) }],
    figures: [],
    remarks,
  }),
  files: ({ tables }) => [{ name: 'raised.csv', table: tables['raised'] }],
  lanes: ({ history, asOf }, units) => lanesOf(history, units, asOf),
};

function reads(parameters: RaiseParameters): Read[] {
  const of = (cell: string, ...tables: string[]): Read[] => (cell === '' ? [] : [{ cell, tables }]);
  // High CO and a supply over its maximum are facts of readings and register: no failing fit may hide them.
  const ifThere = (cell: string, ...tables: string[]): Read[] =>
    of(cell, ...tables).map((read) => ({ ...read, optional: true }));
  return [
    ...of(parameters.readings, 'accepted'),
    ...of(parameters.register, 'units', 'supply-limits', 'economics', 'planning'),
    ...ifThere(parameters.events, 'events'),
    ...ifThere(parameters.derive, 'derived'),
    ...ifThere(parameters.drift, 'drift', 'points', 'path'),
    ...ifThere(parameters.supply, 'supply', 'points', 'path'),
    ...ifThere(parameters.instruments, 'instruments'),
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
const amount = (parameter: string, value: number, unit: string, minimum: number, maximum: number): Blank => ({
  parameter,
  text: `${value} ${unit}`.trim(),
  entry: { kind: 'number', unit, minimum, maximum },
});

const basis = (value: string): Blank => ({
  parameter: 'coBasis',
  text: basisName(value),
  entry: {
    kind: 'choice',
    options: ['air_free', 'at_3pct_o2', 'as_measured'].map((option) => ({ value: option, label: basisName(option) })),
  },
});

function sentence(parameters: RaiseParameters): (string | Blank)[] {
  const { readings, register, events, derive, drift, supply, instruments } = parameters;
  return [
    'Raise units whose chance of leaving tolerance is at least ',
    amount('leastChance', parameters.leastChance, '', 0, 1),
    ', with at most a share of ',
    amount('falseDiscoveryRate', parameters.falseDiscoveryRate, '', 0, 1),
    ' false discoveries in each list; CO from ',
    amount('coLimitPpm', parameters.coLimitPpm, 'ppm', 1, 10_000),
    ' ',
    basis(parameters.coBasis),
    ' that nothing has closed; flues that get hotter, fires that scatter and units that come back, with at most a share of ',
    amount('signFalseDiscoveryRate', parameters.signFalseDiscoveryRate, '', 0, 1),
    ' of them by chance; burners under ',
    amount('richO2Pct', parameters.richO2Pct, '% O2', 0, 10),
    ' in air of ',
    amount('summerAirC', parameters.summerAirC, '°C', 0, 60),
    '; units unread for ',
    amount('unseenMonths', parameters.unseenMonths, 'months', 1, 240),
    '; reading ',
    cell('drift', drift, 'drift'),
    ', ',
    cell('supply', supply, 'supply'),
    ', ',
    cell('instruments', instruments, 'instruments'),
    ', ',
    readingsCell(readings),
    ', ',
    cell('derive', derive, 'derive'),
    ', ',
    cell('register', register, 'register'),
    ' and ',
    cell('events', events, 'events'),
    '.',
  ];
}
