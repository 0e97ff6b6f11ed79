import { html, nothing, type TemplateResult } from 'lit';
import type { CellState } from '../../../shared/cell-state.ts';
import { errorOf, goTo, moreFailed } from '../../../shared/messages/page.ts';
import type { StripHost, StripViews } from '../cell-view.ts';
import type { PageSession } from '../page-session.ts';
import type { BlankChange } from './blank-field.ts';
import './cell-question.ts';
import { type DataCallsHost, dataCalls } from './data-calls.ts';

/** Errors told in full at the top; the flow marks them all. */
const SHOWN_FAILURES = 3;

/** What only the user can settle stands at the top of the page, wherever its cell is. */
export function pageCalls(
  cells: readonly CellState[],
  head: PageSession['head'],
  host: StripHost & DataCallsHost,
  views: StripViews,
): TemplateResult | typeof nothing {
  // A missing file is said once, not again by every cell that reads it.
  const isSaid = (text: string): boolean => head.missing.some((file) => text.includes(`"${file}"`));
  const asking = cells.filter(({ phase, question }) => phase === 'asking' && question);
  const failed = cells.filter(({ phase, message }) => phase === 'failed' && !isSaid(message));
  if (asking.length + failed.length + head.missing.length + head.changed.length === 0) return nothing;
  return html`<div class="calls">
    ${dataCalls(head, host)}
    ${asking.map(
      ({ name, question, parameters }) =>
        html`<bv-question .question=${question} .parameters=${parameters} @bv-blank=${(event: BlankChange) =>
          host.setParameter(name, event.detail.parameter, event.detail.value)}></bv-question>`,
    )}
    ${failed
      .slice(0, SHOWN_FAILURES)
      .map(
        ({ name, kind, message }) =>
          html`<div class="trouble ${views.has(kind) ? '' : 'unknown'}"><p>${errorOf(name, message)}</p><p><a href="#cell-${name}">${goTo(name)}</a></p></div>`,
      )}
    ${failed.length > SHOWN_FAILURES ? html`<p>${moreFailed(failed.length - SHOWN_FAILURES)}</p>` : nothing}
  </div>`;
}
