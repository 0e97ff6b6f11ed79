import type { CellKind, Description, Remark } from '../../shared/cell.ts';
import { anonymousReadings, explainsDrift, instrumentsAnswer, sharedBias } from '../../shared/messages/foresight.ts';
import { instrumentsSchema } from '../../shared/schemas/instruments.ts';
import { cellBlank } from '../../shared/sentence/cell-blank.ts';
import { numberBlank } from '../../shared/sentence/number-blank.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { compute, type InstrumentsResult } from './compute.ts';
import { type InstrumentsParameters, readParameters } from './parameters.ts';

function describe({ rows, anonymous }: InstrumentsResult): Description {
  const count = (verdict: string): number => rows.filter((row) => row.verdict === verdict).length;
  const remarks: Remark[] = [...explained(rows), { severity: 'note', text: sharedBias() }];
  if (anonymous > 0) remarks.unshift({ severity: 'warning', text: anonymousReadings(anonymous) });
  return {
    answer: instrumentsAnswer(rows.length, count('biased'), count('confounded')),
    tables: [{ table: 'instruments', title: 'Analyzers', columns: shownColumns(instrumentsSchema) }],
    figures: [],
    remarks,
  };
}

/** What the biased analyzers make of the fleet's drift. */
function explained(rows: InstrumentsResult['rows']): Remark[] {
  const signed = (value: number): string => `${value > 0 ? '+' : ''}${value.toFixed(2)}`;
  return rows
    .filter(({ verdict, apparentChange }) => verdict === 'biased' && Number.isFinite(apparentChange))
    .map(({ analyzer, apparentChange, changeByBias, driftShare }) => ({
      severity: 'note',
      text: explainsDrift(analyzer, signed(apparentChange), signed(changeByBias), Math.round(100 * driftShare)),
    }));
}

export const kind: CellKind<InstrumentsParameters, InstrumentsResult> = {
  name: 'instruments',
  title: 'Instruments',
  purpose: 'Compares the analyzers with one another through the units that several of them have read.',
  readParameters,
  reads: ({ readings, drift }) => [
    { cell: readings, tables: ['accepted'] },
    { cell: drift, tables: ['analyzers'] },
  ],
  sources: () => [],
  sentence: ({ readings, drift, tolerancePct }) => [
    'Compare the analyzers that are named in ',
    readingsBlank(readings),
    ' by the biases that ',
    cellBlank('drift', 'drift', drift, ['drift']),
    ' found, and call one biased beyond ',
    numberBlank('tolerancePct', 'largest bias let pass', tolerancePct, { minimum: 0, maximum: 5, unit: 'points' }),
    '.',
  ],
  compute,
  describe,
  files: ({ tables }) => [{ name: 'instruments.csv', table: tables['instruments'] }],
};
