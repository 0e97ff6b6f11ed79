import type { CellKind, Description } from '../../shared/cell.ts';
import * as say from '../../shared/messages/corrections.ts';
import { correctionsSchema } from '../../shared/schemas/corrections.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { amended } from './amended.ts';
import type { CorrectionFate } from './apply-corrections.ts';
import { type CorrectionsResult, compute } from './compute.ts';
import { type CorrectionsParameters, readParameters } from './parameters.ts';

export const kind: CellKind<CorrectionsParameters, CorrectionsResult> = {
  name: 'corrections',
  title: 'Corrections',
  purpose: 'Puts readings right, each change with a reason, initials and a date, and each reversible.',
  readParameters,
  reads: ({ readings }) => [{ cell: readings, tables: ['accepted', 'set-aside', 'account', 'duplicates'] }],
  sources: () => [],
  sentence: ({ readings, corrections }) => [
    'Lay ',
    say.corrections(corrections.filter(({ lifted }) => !lifted).length),
    ' over ',
    readingsBlank(readings),
    '; the readings themselves stay as imported.',
  ],
  compute,
  amended,
  describe,
  files: ({ tables, touched }) => [
    { name: 'corrections.csv', table: tables.corrections },
    ...(touched > 0 ? [{ name: 'corrected.csv', table: tables.accepted }] : []),
  ],
};

function describe({ fates, touched, setAside }: CorrectionsResult): Description {
  const lost = fates.filter(({ status }) => status === 'lost');
  const lifted = fates.filter(({ status }) => status === 'lifted').length;
  const effective = fates.filter(({ status }) => status === 'applied').length;
  return {
    answer: fates.length === 0 ? say.none() : say.answer(effective, touched, setAside, lifted, lost.length),
    tables: [
      { table: 'corrections', title: 'Corrections', columns: shownColumns(correctionsSchema) },
      { table: 'accepted', title: 'Readings as corrected', columns: shownColumns(readingsSchema) },
    ],
    figures: [],
    remarks: lost.map(({ correction }) => ({
      severity: 'warning',
      text: say.lost(wordsOf(correction), correction.reason, correction.initials, correction.made_on),
    })),
  };
}

function wordsOf(correction: CorrectionFate['correction']): string {
  if ('row' in correction) {
    const { unit, taken_at, fire, state } = correction.row;
    return say.rowWords(unit, taken_at, fire, state);
  }
  return correction.action === 'merge_units'
    ? say.unitsWords(correction.from, correction.to)
    : say.unitsWords(...correction.units);
}
