import { html, nothing, type TemplateResult } from 'lit';
import * as say from '../../shared/messages/working.ts';
import { sourceTitle } from '../../shared/sources/source-title.ts';
import type { ShownReading, ShownWorking } from '../../shared/working/shown-working.ts';
import type { WorkingInput, WorkingShare, WorkingStep } from '../../shared/working/working.ts';
import { formulaText } from './formula-text.ts';

/** A reading as the file holds it: where, the cells that were used, and the whole line. */
export function readingPart({
  unit,
  takenAt,
  fire,
  state,
  fuel,
  file,
  line,
  origin,
  amended,
}: ShownReading): TemplateResult {
  const cells = origin?.cells ?? [];
  const [column, head, text] = say.originColumns();
  const hasPlaces = cells.some(({ position }) => Number.isFinite(position));
  return html`<div class="reading">
    <p class="of">${say.readingWords(unit, takenAt, fire, state, fuel)}</p>
    <p class="file">${say.workingOrigin(file, line)}</p>
    ${origin && origin.text === '' ? html`<p>${say.originGone()}</p>` : nothing}
    ${
      cells.length === 0
        ? nothing
        : html`<table><thead><tr>${hasPlaces ? html`<th class="n">${column}</th>` : nothing}<th>${head}</th><th>${text}</th></tr></thead>
          <tbody>${cells.map(
            (cell) =>
              html`<tr>${hasPlaces ? html`<td class="n">${cell.position}</td>` : nothing}<td>${cell.head}</td><td>${cell.text}</td></tr>`,
          )}</tbody></table>`
    }
    ${amended.length === 0 ? nothing : html`<p class="of">${say.amendedHead(amended.length)}</p><ul>${amended.map((text) => html`<li>${text}</li>`)}</ul>`}
    ${origin?.text ? html`<p class="line-head">${say.originLine()}</p><pre tabindex="0" aria-label=${say.originLine()}>${origin.text}</pre>` : nothing}
  </div>`;
}

/** Relations from the readings up, as knots on one line; the last is the number that was asked about. */
export function stepList(steps: readonly WorkingStep[]): TemplateResult {
  return html`<ol class="chain">${steps.map(
    (step, i) => html`<li class=${i === steps.length - 1 ? 'last' : ''}>
      <p class="what">${step.title}</p>
      <p class="symbols">${formulaText(step.symbols)}</p>
      ${saysMore(step) ? html`<p class="numbers">${formulaText(step.numbers)}</p>` : nothing}
      <p class="result"><span class="equals">=</span> ${step.result}</p>
      <p class="by">${sourceTitle(step.source)}${step.validity === '' ? nothing : html` · ${step.validity}`}</p>
    </li>`,
  )}</ol>`;
}

/** Where nothing but the result would stand again, the numbers are left out. */
const saysMore = ({ symbols, numbers, result }: WorkingStep): boolean =>
  numbers !== `${symbols.split(' = ')[0]} = ${result}`;

/** What the chain begins with; `more` adds what leads on to another cell's number. */
export function inputList(
  inputs: readonly WorkingInput[],
  more: (input: WorkingInput) => TemplateResult | typeof nothing,
): TemplateResult {
  return html`<ul class="inputs">${inputs.map(
    (input) => html`<li><span class="name">${input.title}</span>
      <span class="value"><span class="sign">${formulaText(input.symbol)} =</span> ${input.stated}${input.shownSd === '' ? nothing : html` <span class="sd">± ${input.shownSd}</span>`}</span>
      ${more(input)}</li>`,
  )}</ul>`;
}

/** Each input's part of the variance as a bar to scale, in words beside it. */
export function budgetBars({ budget, steps }: ShownWorking): TemplateResult | typeof nothing {
  const last = steps[steps.length - 1];
  if (budget.length === 0) return nothing;
  return html`<p>${say.budgetIntro(budget.length)}</p>
    <ul class="budget">${budget.map((share) => bar(share, last.unit))}</ul>`;
}

function bar({ title, percent, contribution }: WorkingShare, unit: string): TemplateResult {
  return html`<li><span class="name">${title}</span> <span class="percent">${say.shareWords(percent)}</span>
    <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true"><rect class="whole" width="100" height="10" /><rect class="part" width=${Math.max(percent, 0.4)} height="10" /></svg>
    <span class="detail">${say.shareDetail(contribution, unit)}</span></li>`;
}

/** Functions and sources, in full. */
export function footPart({ functions, sources }: ShownWorking): TemplateResult {
  if (functions.length + sources.length === 0) return html``;
  return html`<div class="pair">${
    functions.length === 0
      ? nothing
      : html`<div><h5>${say.functionsHead(functions.length)}</h5><dl>${functions.map(({ usage, title }) => html`<dt>${usage}</dt><dd>${title}</dd>`)}</dl></div>`
  }${
    sources.length === 0
      ? nothing
      : html`<div><h5>${say.sourcesHead(sources.length)}</h5><ul class="sources">${sources.map(({ full, standing }) => html`<li>${full} <span class="standing">(${say.standingWords(standing)})</span></li>`)}</ul></div>`
  }</div>`;
}
