import type { CellKind, Description, Figure, Read, Segment } from '../../shared/cell.ts';
import { backcheckAnswer, backcheckCaution, calibrationAlternative } from '../../shared/messages/foresight.ts';
import { calibrationSchema, coverageSchema, methodsSchema } from '../../shared/schemas/backcheck.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { type BackcheckResult, compute } from './compute.ts';
import { type BackcheckParameters, readParameters } from './parameters.ts';

const eventsOf = ({ events }: BackcheckParameters): Read[] => (events === '' ? [] : [{ cell: events }]);

function sentence({ readings, derive, register, horizonDays, leastChance, years }: BackcheckParameters): Segment[] {
  return [
    'Go back to the first day of each quarter of the past ',
    { parameter: 'years', text: String(years), entry: { kind: 'number', minimum: 1, maximum: 30, unit: 'years' } },
    ' years, follow the fires in ',
    { parameter: 'readings', text: readings, entry: { kind: 'cell', kinds: ['readings'] } },
    ' and ',
    { parameter: 'derive', text: derive, entry: { kind: 'cell', kinds: ['derive'] } },
    ' as they stood then, against ',
    { parameter: 'register', text: register, entry: { kind: 'cell', kinds: ['register'] } },
    ', raise those whose chance of leaving within ',
    {
      parameter: 'horizonDays',
      text: String(horizonDays),
      entry: { kind: 'number', minimum: 1, maximum: 3653, unit: 'days' },
    },
    ' days was at least ',
    {
      parameter: 'leastChance',
      text: String(leastChance),
      entry: { kind: 'number', minimum: 0.01, maximum: 0.99, unit: '' },
    },
    ', and hold what was said against what the next visit found.',
  ];
}

/** Chance said against share found outside; on the dashed line they are equal. */
function calibrationFigure({ score }: BackcheckResult): Figure[] {
  if (score.calibration.length === 0) return [];
  const values = score.calibration.map(({ meanChance, foundOutside, forecasts }) => ({
    a: meanChance,
    b: foundOutside,
    c: forecasts,
  }));
  const axis = { scale: { domain: [0, 1] }, type: 'quantitative' };
  return [
    {
      name: 'calibration',
      title: 'Chance said and share found outside',
      alternative: calibrationAlternative(score.calibration.length, score.forecasts),
      specification: {
        width: 320,
        height: 320,
        layer: [
          {
            data: {
              values: [
                { a: 0, b: 0 },
                { a: 1, b: 1 },
              ],
            },
            mark: { type: 'line', strokeDash: [4, 4], color: '#888' },
            encoding: { x: { field: 'a', ...axis }, y: { field: 'b', ...axis } },
          },
          {
            data: { values },
            mark: { type: 'point', filled: true, color: '#0072B2' },
            encoding: {
              x: { field: 'a', ...axis, title: 'Chance said' },
              y: { field: 'b', ...axis, title: 'Share found outside' },
              size: { field: 'c', type: 'quantitative', title: 'Forecasts' },
            },
          },
        ],
      },
    },
  ];
}

function describe(result: BackcheckResult): Description {
  const { score, quarters } = result;
  const percent = (share: number): string => (Number.isFinite(share) ? `${Math.round(100 * share)} %` : 'unknown');
  return {
    answer: backcheckAnswer(
      quarters,
      score.raised,
      score.raisedFoundOutside,
      Number.isFinite(score.leadDays) ? Math.round(score.leadDays) : 0,
      percent(score.coverage[2].share),
      score.forecasts,
    ),
    tables: [
      { table: 'methods', title: 'Against plain baselines', columns: shownColumns(methodsSchema) },
      { table: 'calibration', title: 'Chances said and found', columns: shownColumns(calibrationSchema) },
      { table: 'coverage', title: 'Intervals said and found', columns: shownColumns(coverageSchema) },
    ],
    figures: calibrationFigure(result),
    remarks: [{ severity: 'note', text: backcheckCaution() }],
  };
}

export const kind: CellKind<BackcheckParameters, BackcheckResult> = {
  name: 'backcheck',
  title: 'Looking back',
  purpose:
    'Shows how far the forecasts could have been trusted on this fleet: what was said in the past, what was found.',
  readParameters,
  reads: (parameters) => [
    { cell: parameters.readings, tables: ['accepted'] },
    { cell: parameters.derive, tables: ['derived'] },
    { cell: parameters.register, tables: ['units', 'limits'] },
    ...eventsOf(parameters),
  ],
  sources: () => [],
  sentence,
  compute,
  describe,
  files: ({ tables }) => [{ name: 'backcheck.csv', table: tables['forecasts'] }],
};
