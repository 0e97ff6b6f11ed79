import { type Markup, markup } from '../../shared/markup/markup.ts';
import * as sayReport from '../../shared/messages/report.ts';
import * as say from '../../shared/messages/working.ts';
import { sourceTitle } from '../../shared/sources/source-title.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import { symbolParts } from '../../shared/working/symbol-parts.ts';
import type { WorkingInput, WorkingStep } from '../../shared/working/working.ts';
import type { ReportWorking } from './report-working.ts';

/** Parts of the variance below this many percent are summed up. */
const LEAST_PERCENT = 0.5;

/** The anchor of a working, for the finding that it belongs to. */
export const workingAnchor = (row: number): string => `working-${row + 1}`;

/** The figures of the raised sentences down to their readings, folded on a screen and compact on paper. */
export function workingSection(raised: Table | undefined, workings: readonly ReportWorking[]): Markup {
  if (!raised || workings.length === 0) return markup``;
  const functions = new Map(
    workings
      .flatMap(({ working, rests }) => [working, ...rests])
      .flatMap((one) => one.functions.map((called) => [called.usage, called.title] as const)),
  );
  return markup`<section><h2>${sayReport.workingsHead()}</h2>
<p class="quiet">${sayReport.workingsIntro()} ${sayReport.workingsShown(workings.length, raised.rows)}</p>
${workings.map((one) => entry(raised, one))}
${functions.size === 0 ? '' : markup`<h3>${sayReport.workingFunctionsHead()}</h3><dl>${[...functions].map(([usage, title]) => markup`<dt>${usage}</dt><dd>${title}</dd>`)}</dl>`}</section>`;
}

function entry(raised: Table, { row, working, rests }: ReportWorking): Markup {
  const text = (name: string): string => textAt(textsOf(raised, name), row);
  const last = working.steps[working.steps.length - 1];
  const rank = numbersOf(raised, 'rank')[row];
  return markup`<details class="working" id="${workingAnchor(row)}"><summary><b>${sayReport.rankAndUnit(rank, text('unit'))}</b> ${say.workingHead(working.title, last.stated)} <span class="quiet">${say.sdWords(last.sd, last.unit)}</span></summary>
<p>${text('evidence')}</p>${chain(working)}${rests.map(rest)}</details>
`;
}

function rest(working: ShownWorking): Markup {
  const last = working.steps[working.steps.length - 1];
  return markup`<h4>${say.workingHead(working.title, last.stated)} <span class="quiet">${say.sdWords(last.sd, last.unit)}</span></h4>
${working.readings.map(
  ({ unit, takenAt, fire, state, fuel, file, line, amended }) =>
    markup`<p>${say.readingWords(unit, takenAt, fire, state, fuel)}. ${say.workingOrigin(file, line)}${amended.length === 0 ? '' : ` ${say.amendedHead(amended.length)}: ${amended.join('; ')}.`}</p>`,
)}${chain(working)}${budget(working)}`;
}

function chain({ inputs, steps }: ShownWorking): Markup {
  return markup`<p class="in">${inputs.map((input, i) => markup`${i > 0 ? '; ' : ''}${given(input)}`)}</p><ol class="steps">${steps.map(step)}</ol>`;
}

const given = ({ title, symbol, stated, shownSd }: WorkingInput): Markup =>
  markup`${title}: ${formula(symbol)} = ${stated}${shownSd === '' ? '' : ` ± ${shownSd}`}`;

function step({ title, symbols, numbers, result, source }: WorkingStep): Markup {
  const put = numbers.slice(numbers.indexOf(' = ') + 3);
  return markup`<li>${title}: ${formula(symbols)}${put === result || symbols === numbers ? '' : markup` = <span class="put">${formula(put)}</span>`} <b>= ${result}</b> <span class="quiet">${sourceTitle(source)}</span></li>`;
}

const formula = (text: string): Markup[] =>
  symbolParts(text).map((part) =>
    typeof part === 'string' ? markup`${part}` : markup`${part.symbol}<sub>${part.index}</sub>`,
  );

function budget({ budget: shares }: ShownWorking): Markup {
  if (shares.length === 0) return markup``;
  const told = shares.filter(({ percent }) => percent >= LEAST_PERCENT);
  const words = told.map(({ title, percent }) => `${title} ${say.shareWords(percent)}`);
  return markup`<p>${sayReport.budgetWords(words.join(', '), shares.length - told.length)}</p>`;
}
