import { html, type TemplateResult } from 'lit';
import { allCautions, cautionLeave } from '../../../shared/messages/cautions.ts';
import { cautionsHead } from '../../../shared/messages/page.ts';

/** What must be read before anything here is relied on; always at the foot of the page, also in print. */
export function cautions(): TemplateResult {
  const [first, others] = [cautionLeave(), allCautions().filter((caution) => caution !== cautionLeave())];
  return html`<footer class="cautions" aria-label=${cautionsHead()}>
    <h2>${cautionsHead()}</h2>
    <p class="now">${first}</p>
    <ul>${others.map((caution) => html`<li>${caution}</li>`)}</ul>
  </footer>`;
}
