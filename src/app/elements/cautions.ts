import { html, type TemplateResult } from 'lit';
import {
  cautionCertificate,
  cautionCo,
  cautionNow,
  cautionOld,
  cautionsHead,
  cautionWork,
} from '../../../shared/messages/page.ts';

/** What must be read before anything here is relied on; always at the foot of the page, also in print. */
export function cautions(): TemplateResult {
  return html`<footer class="cautions" aria-label=${cautionsHead()}>
    <h2>${cautionsHead()}</h2>
    <p class="now">${cautionNow()}</p>
    <ul><li>${cautionOld()}</li><li>${cautionWork()}</li><li>${cautionCo()}</li><li>${cautionCertificate()}</li></ul>
  </footer>`;
}
