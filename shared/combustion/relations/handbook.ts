import type { Definition, InputType, NamedConstant } from '../../formula/definition.ts';
import { FUNCTIONS } from '../../formula/functions.ts';
import { findUnit } from '../../quantities/find-unit.ts';
import type { Source } from '../../sources/source.ts';
import type { Working } from '../../working/working.ts';
import { AIR_RELATIONS } from './air-relations.ts';
import { CONSTANTS } from './constants.ts';
import { EMISSION_RELATIONS } from './emission-relations.ts';
import { RELATION_INPUTS } from './inputs.ts';
import { LOSS_RELATIONS } from './loss-relations.ts';
import { REFERENCE_RELATIONS } from './reference-relations.ts';

/** The worked example of every relation: one reading whose working the handbook prints. */
export const HANDBOOK_READING: Readonly<Record<string, number | string>> = {
  o2_pct: 5,
  co2_pct: 9.1,
  co2_from: 'measured',
  o2_wet_pct: 4.3,
  co_ppm: 87,
  co_air_free_ppm: 114,
  nox_ppm: 40,
  flue_C: 52,
  air_C: 10,
  supply_static_Pa: 2466,
  supply_running_Pa: 2217,
  barometer_kPa: 100.2,
  fuel: 'natural_gas',
};

/** Of the combustion air in the examples, so that its water is seen in the relations that hold it. */
export const HANDBOOK_HUMIDITY_PCT = 40;

const shownUnit = (code: string): string => findUnit(code)?.shown || '';

const CHAPTERS: readonly (readonly [string, readonly Definition[]])[] = [
  ['Oxygen, carbon dioxide, excess air', AIR_RELATIONS],
  ['Carbon monoxide and nitrogen oxides', EMISSION_RELATIONS],
  ['Losses, efficiency, dew point', LOSS_RELATIONS],
  ['Gas supply and reference air', REFERENCE_RELATIONS],
];

/**
 * The methods handbook as Markdown, from the same definitions that are calculated. `example` shows the working of a
 * relation for HANDBOOK_READING.
 */
export function writeHandbook(
  sources: Readonly<Record<string, Source>>,
  example: (name: string) => Working | undefined,
): string {
  return [
    '# Methods',
    'Generated from the definitions in shared/combustion/relations; a test fails when it is out of date. Each relation stands with its symbol, its unit, its formula in the notebook’s own language, its range of validity, its source, and the numbers of one reading put in.',
    exampleSentence(),
    ...CHAPTERS.flatMap(([title, relations]) => [
      `## ${title}`,
      ...relations.flatMap((each) => entry(each, sources, example)),
    ]),
    '## Inputs',
    table(['name', 'symbol', 'what', 'unit'], [...RELATION_INPUTS].map(inputRow)),
    '## Constants',
    table(['name', 'symbol', 'value', 'what'], [...CONSTANTS].map(constantRow)),
    '## Functions of the formula language',
    table(
      ['written', 'what'],
      [...FUNCTIONS.values()].map(({ usage, title }) => [`\`${usage}\``, title]),
    ),
    '## Uncertainty',
    'First order (JCGM 100:2008, 5.1.2): the partial derivatives of each relation with respect to the measured inputs run forward through the whole chain, so that an input that enters twice is counted as one. Standard uncertainties of the inputs are by class of analyzer and can be edited; the defaults are the project’s own, from common practice. Terms that an analyzer or a fuel brings into several numbers are named in the working, since they cancel in a difference and add up in a sum.',
    '## Sources',
    table(
      ['short', 'full', 'known'],
      Object.values(sources).map(({ short, full, standing }) => [short, full, standing]),
    ),
  ]
    .join('\n\n')
    .concat('\n');
}

function exampleSentence(): string {
  const parts = Object.entries(HANDBOOK_READING).map(([name, value]) => `${name} ${value}`);
  return `The reading of the examples: ${parts.join(', ')}; a burner with a fan of fixed volume; combustion air of ${HANDBOOK_HUMIDITY_PCT} % relative humidity. In dry air, the notebook’s default, the terms with its water fall away.`;
}

function entry(
  { name, symbol, title, unit, formula, source, validity }: Definition,
  sources: Readonly<Record<string, Source>>,
  example: (name: string) => Working | undefined,
): string[] {
  const working = example(name);
  const last = working?.steps[working.steps.length - 1];
  const shown = shownUnit(unit);
  const lines = [
    `### ${title}`,
    `\`${name}\`, symbol ${symbol}${shown === '' ? ', a plain number' : `, in ${shown}`}`,
    ['```', ...[`${name} = ${formula}`], '```'].join('\n'),
    `Holds: ${validity}`,
    `Source: ${sources[source]?.short ?? source}.`,
  ];
  if (!last) return lines;
  const spread =
    Number.isFinite(last.sd) && last.sd > 0 ? `, standard uncertainty ${Number(last.sd.toPrecision(3))}` : '';
  return [...lines, ['Example:', '', '```', last.symbols, last.numbers, `= ${last.result}${spread}`, '```'].join('\n')];
}

function inputRow([name, input]: readonly [string, InputType]): string[] {
  return input.kind === 'number'
    ? [`\`${name}\``, input.symbol, input.title, shownUnit(input.unit)]
    : [`\`${name}\``, '', 'measured or calculated', input.kind];
}

function constantRow([name, { symbol, value, unit, title }]: readonly [string, NamedConstant]): string[] {
  return [`\`${name}\``, symbol, `${value} ${shownUnit(unit)}`.trim(), title];
}

/** A Markdown table with its columns aligned, as the formatter leaves it. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const cells = [head, ...rows].map((row) => row.map((cell) => cell.replaceAll('|', '\\|')));
  const widths = head.map((_, column) => Math.max(3, ...cells.map((row) => [...row[column]].length)));
  const line = (row: readonly string[], fill = ' '): string =>
    `| ${row.map((cell, column) => cell + fill.repeat(widths[column] - [...cell].length)).join(' | ')} |`;
  const [first, ...others] = cells;
  return [
    line(first),
    line(
      head.map(() => ''),
      '-',
    ),
    ...others.map((row) => line(row)),
  ].join('\n');
}
