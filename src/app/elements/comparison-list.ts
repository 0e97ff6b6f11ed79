import { html, nothing, type TemplateResult } from 'lit';
import * as say from '../../../shared/messages/two-notebooks.ts';
import type { Comparison } from '../protocol.ts';

/** Which units are raised or cleared between two notebooks or days, and what was decided otherwise. */
export function comparisonList(
  { decided, changes, fault }: Comparison,
  between: string,
  isOfDays: boolean,
): TemplateResult {
  return html`<div class="comparison"><h3>${between}</h3>
    ${fault === '' ? nothing : html`<p class="fault">${fault}</p>`}
    ${changes ? raisedLists(changes) : nothing}
    ${isOfDays ? nothing : decisions(decided)}</div>`;
}

const decisions = (decided: readonly string[]): TemplateResult => html`<h4>${say.decidedHead()}</h4>
  ${
    decided.length === 0
      ? html`<p>${say.nothingDecided()}</p>`
      : html`<ul>${decided.map((line) => html`<li>${say.decidedLine(line)}</li>`)}</ul>`
  }`;

function raisedLists({ newly, cleared, otherwise, raised }: NonNullable<Comparison['changes']>): TemplateResult {
  if (newly.length + cleared.length + otherwise.length === 0) return html`<p>${say.sameRaised(raised)}</p>`;
  const list = (head: string, units: readonly { unit: string; words: string }[]) =>
    units.length === 0
      ? nothing
      : html`<h4>${head}</h4><ul>${units.map(({ unit, words }) => html`<li><b>${unit}</b> ${words}</li>`)}</ul>`;
  return html`${list(
    say.newlyHead(newly.length),
    newly.map(({ unit, reasons }) => ({ unit, words: reasons })),
  )}
    ${list(
      say.clearedHead(cleared.length),
      cleared.map(({ unit, reasons }) => ({ unit, words: reasons })),
    )}
    ${list(
      say.otherwiseHead(otherwise.length),
      otherwise.map(({ unit, before, after }) => ({ unit, words: say.wasIs(before, after) })),
    )}
    <p>${say.restSame(raised)}</p>`;
}
