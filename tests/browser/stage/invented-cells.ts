import type { Description, Segment, ShownColumn } from '../../../shared/cell.ts';
import type { CellState } from '../../../shared/cell-state.ts';

const column = (name: string, title: string, unit = '', digits = 0): ShownColumn => ({
  column: name,
  title,
  unit,
  digits,
});
const READINGS = [
  column('unit', 'Unit'),
  column('taken_at', 'Taken'),
  column('fire', 'Fire'),
  column('state', 'State'),
  column('o2_pct', 'O2', '%', 2),
  column('co2_pct', 'CO2', '%', 2),
  column('co_ppm', 'CO', 'ppm', 0),
  column('flue_C', 'Flue gas', '°C', 1),
  column('supply_drop_Pa', 'Supply drop', 'Pa', 0),
  column('efficiency_gross_pct', 'Efficiency (gross)', '%', 1),
];

function cell(
  name: string,
  reads: readonly string[],
  answer: string,
  sentence: readonly Segment[],
  rows: Record<string, number>,
  description: Partial<Description> = {},
): CellState {
  return {
    name,
    kind: name,
    title: name[0].toUpperCase() + name.slice(1),
    parameters: {},
    sentence,
    details: [],
    reads,
    phase: 'done',
    progress: 1,
    description: { answer, tables: [], figures: [], remarks: [], ...description },
    stale: false,
    message: '',
    question: undefined,
    waitsFor: [],
    rows,
    why: 'Calculated because the notebook was opened.',
    version: 1,
  };
}

const reading = (parameter: string, name: string): Segment => ({
  parameter,
  label: name,
  text: name,
  entry: { kind: 'cell', kinds: [name] },
});

/** A finished notebook of invented cells over `rows` readings. */
export function inventedCells(rows: number): CellState[] {
  const sheet = (table: string, title: string) => ({ table, title, columns: READINGS });
  return [
    cell(
      'register',
      [],
      '26 units in 9 buildings.',
      [
        'Take the units from ',
        { parameter: 'files', label: 'data files', text: 'register.csv', entry: { kind: 'files' } },
        '.',
      ],
      { units: 26 },
      { tables: [sheet('units', 'Units')] },
    ),
    cell(
      'readings',
      ['register'],
      `${rows} readings accepted, 17 set aside, 3 duplicates.`,
      [
        'Read ',
        { parameter: 'files', label: 'data files', text: 'north.csv and south.csv', entry: { kind: 'files' } },
        ', matching units to ',
        reading('register', 'register'),
        '.',
      ],
      { accepted: rows, 'set-aside': 17, duplicates: 3 },
      { tables: [sheet('accepted', 'Accepted'), sheet('set-aside', 'Set aside')] },
    ),
    cell(
      'derive',
      ['readings', 'register'],
      'Excess air runs from 14 to 52 %.',
      ['Derive from ', reading('readings', 'readings'), ' and ', reading('register', 'register'), '.'],
      { derived: rows },
      {
        tables: [sheet('derived', 'Derived')],
        remarks: [
          { severity: 'warning', text: 'Barometer unknown on 40 readings; 101.325 kPa was used.' },
          { severity: 'note', text: 'Combustion air taken as dry.' },
        ],
      },
    ),
    cell(
      'drift',
      ['derive', 'register'],
      '2 of 50 lanes are leaving their band within 365 days.',
      [
        'Fit how ',
        reading('derive', 'derive'),
        ' drifts, and look ',
        {
          parameter: 'horizonDays',
          label: 'days ahead',
          text: '365 days',
          entry: { kind: 'number', unit: 'days', minimum: 1, maximum: 3653 },
        },
        ' ahead.',
      ],
      { drift: 50 },
      { figures: [FIGURE] },
    ),
    cell('supply', ['readings', 'register'], '1 drop grows toward its limit.', ['Fit how the supply drop grows.'], {
      supply: 24,
    }),
    cell('instruments', ['readings', 'drift'], '5 analyzers, none judged yet.', ['Compare the analyzers.'], {
      instruments: 5,
    }),
    cell(
      'raise',
      ['drift', 'supply', 'instruments', 'readings'],
      '4 of 26 units raised: 1 safety, 1 supply, 1 tolerance, 1 data.',
      [
        'Raise units whose chance of leaving tolerance is at least ',
        {
          parameter: 'probability',
          label: 'least chance of leaving',
          text: '50 %',
          entry: { kind: 'number', unit: '%', minimum: 0, maximum: 100 },
        },
        ', reading ',
        reading('drift', 'drift'),
        ' and ',
        reading('supply', 'supply'),
        '.',
      ],
      { raised: 5 },
    ),
    cell(
      'note',
      [],
      '',
      [
        {
          parameter: 'text',
          label: 'note',
          text: 'High fire of NOR-7 was read with the side panel off.',
          entry: { kind: 'text' },
        },
      ],
      {},
    ),
  ];
}

const FIGURE = {
  name: 'slopes',
  title: 'Drift by class',
  alternative: 'Most lanes drift by less than 0.1 points a year; three linkage burners drift by 0.3 to 0.5.',
  specification: {
    height: 260,
    data: {
      values: [0.02, 0.05, 0.08, 0.11, 0.3, 0.42, 0.5].map((slope, i) => ({
        slope,
        control: i > 3 ? 'linkage' : 'parallel',
      })),
    },
    mark: { type: 'point', filled: true, size: 140 },
    encoding: {
      x: { field: 'slope', type: 'quantitative', title: 'O2 drift in points a year' },
      y: { field: 'control', type: 'nominal', title: null },
      color: { field: 'control', type: 'nominal' },
      shape: { field: 'control', type: 'nominal' },
    },
  },
};
