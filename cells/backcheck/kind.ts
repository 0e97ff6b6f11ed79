import type { CellKind, Description, Figure, Read, Segment } from '../../shared/cell.ts';
import { FLEET_PASSES, passShard } from '../../shared/foresight/fleet-passes.ts';
import { backcheckAnswer, backcheckCaution, calibrationAlternative } from '../../shared/messages/foresight.ts';
import { calibrationSchema, coverageSchema, methodsSchema } from '../../shared/schemas/backcheck.ts';
import { cellBlank } from '../../shared/sentence/cell-blank.ts';
import { numberBlank } from '../../shared/sentence/number-blank.ts';
import { shareBlank } from '../../shared/sentence/share-blank.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { type BackcheckResult, compute } from './compute.ts';
import { type BackcheckParameters, readParameters } from './parameters.ts';

const eventsOf = ({ events }: BackcheckParameters): Read[] => (events === '' ? [] : [{ cell: events }]);

function sentence({ readings, derive, register, horizonDays, leastChance, years }: BackcheckParameters): Segment[] {
  return [
    'Go back to the first day of each quarter of the past ',
    numberBlank('years', 'years to go back', years, { minimum: 1, maximum: 30, unit: 'years' }),
    ', follow the fires in ',
    cellBlank('readings', 'readings', readings, ['readings']),
    ' and ',
    cellBlank('derive', 'derived values', derive, ['derive']),
    ' as they stood then, against ',
    cellBlank('register', 'register', register, ['register']),
    ', raise those whose chance of leaving within ',
    numberBlank('horizonDays', 'days ahead', horizonDays, { minimum: 1, maximum: 3653, unit: 'days' }),
    ' was at least ',
    shareBlank('leastChance', 'least chance of leaving', leastChance, 0.01, 0.99),
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
      score.raisedExpectedOutside.toFixed(1),
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
  crews: { [FLEET_PASSES]: passShard },
  describe,
  files: ({ tables }) => [{ name: 'backcheck.csv', table: tables['forecasts'] }],
};
