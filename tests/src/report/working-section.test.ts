import { describe, expect, test } from 'vitest';
import { raisedSchema } from '../../../shared/schemas/raised.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { tableOf } from '../../../shared/table/schema.ts';
import type { Column } from '../../../shared/table/table.ts';
import type { ShownWorking } from '../../../shared/working/shown-working.ts';
import { raisedSection } from '../../../src/report/raised-section.ts';
import type { ReportWorking } from '../../../src/report/report-working.ts';
import { workingSection } from '../../../src/report/working-section.ts';

const NASTY = '<b>"&';
const raised = tableOf(
  raisedSchema,
  2,
  new Map<string, Column>([
    ['rank', numberColumn('1', Float64Array.of(1, 2))],
    ['unit', textColumn([`B-07${NASTY}`, 'B-08'])],
    ['reason', textColumn(['co_high', 'no_data'])],
    ['tier', textColumn(['safety', 'data'])],
    ['evidence', textColumn(['Read 757 ppm air-free.', 'Not read.'])],
  ]),
);

const given = { title: 'CO, air-free', symbol: 'CO,af', shown: '757.01 ppm', stated: '757 ppm', shownSd: '25 ppm' };
function working(over: Partial<ShownWorking> = {}): ShownWorking {
  return {
    place: { cell: 'raise', column: 'evidence', row: 0 },
    name: 'co_high',
    title: 'CO above the limit',
    steps: [
      {
        ...{ name: 'co_high', title: 'CO above the limit', symbols: 'ΔCO = CO,af − CO,limit' },
        ...{
          numbers: 'ΔCO = 757.01 ppm − 400 ppm',
          result: '357.01 ppm',
          stated: '357 ppm',
          value: 357.01,
          sd: 24.9,
          unit: 'ppm',
        },
        ...{ source: 'fieldCo', validity: '' },
      },
    ],
    inputs: [{ name: 'co', ...given, from: { cell: 'derive', column: 'co_air_free_ppm', row: 4 } }],
    budget: [],
    functions: [],
    readings: [],
    sources: [],
    ...over,
  };
}
const REST = working({
  title: 'CO, air-free',
  readings: [
    {
      ...{ unit: `B-07${NASTY}`, takenAt: '2026-05-10T08:30', fire: 'high', state: 'as_found', fuel: 'natural_gas' },
      ...{ file: `a${NASTY}.csv`, line: 12, fields: [], origin: undefined, amended: [] },
    },
  ],
  budget: [
    { input: 'co', title: 'CO as read', value: 460, sd: 13.8, slope: 1.6, contribution: 22.7, percent: 83.4 },
    { input: 'o2', title: 'O2 as read', value: 8.2, sd: 0.17, slope: 60, contribution: 10.1, percent: 16.4 },
    { input: 'p', title: 'Pressure', value: 1, sd: 1, slope: 0, contribution: 0.1, percent: 0.2 },
  ],
  functions: [{ usage: 'otherwise(x, y)', title: 'x where it is known, else y' }],
});
const WORKINGS: readonly ReportWorking[] = [{ row: 0, working: working(), rests: [REST] }];

describe('the working of raised figures in the report', () => {
  const html = workingSection(raised, WORKINGS).text;

  test('follows the figure down to its reading: symbols, numbers with units, result, uncertainty, file and line', () => {
    for (const part of [
      'ΔCO = CO<sub>af</sub> − CO<sub>limit</sub>',
      '757.01 ppm − 400 ppm',
      '<b>= 357.01 ppm</b>',
      'CO above the limit: 357 ppm <span class="quiet">± 25 ppm</span>',
      ' = 757 ppm ± 25 ppm',
      'line 12.',
      '2026-05-10 08:30, high fire, as found, natural gas',
      'Of its variance: CO as read 83.4 %, O2 as read 16.4 %, one input with less than 0.5 %.',
      'Field practice for flue CO',
      'otherwise(x, y)',
    ])
      expect(html).toContain(part);
  });

  test('says how many of the findings are here, and by what rule', () => {
    expect(html).toContain('Here is the figure of 1 of the 2 findings, the gravest first and at most 60.');
  });

  test('is folded on a screen, and the finding leads to it', () => {
    expect(html).toContain('<details class="working" id="working-1"><summary>');
    expect(raisedSection(raised, [], WORKINGS, 20).text).toContain('<a href="#working-1">Its working</a>');
    expect(raisedSection(raised, [], [], 20).text).not.toContain('Its working');
  });

  test('escapes what comes from files', () => {
    expect(html).not.toContain(NASTY);
    expect(html).toContain('a&lt;b&gt;&quot;&amp;.csv');
  });

  test('is left out where nothing has a working', () => {
    expect(workingSection(raised, []).text).toBe('');
    expect(workingSection(undefined, WORKINGS).text).toBe('');
  });
});
