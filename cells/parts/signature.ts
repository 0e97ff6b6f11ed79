import { html, type TemplateResult } from 'lit';
import type { CorrectionDraft } from '../../shared/corrections/draft-correction.ts';
import * as say from '../../shared/messages/correcting.ts';

/** Whoever signed last signs the next one too, until the page is closed. */
let lastInitials = '';

/** The places for reason, initials and date: without them nothing is corrected. */
export function signature(today: string): TemplateResult {
  return html`<div class="fill"><label class="long">${say.reasonWord()} <input name="reason" type="text" autocomplete="off" /></label>
    <label>${say.initialsWord()} <input name="initials" type="text" autocomplete="off" size="6" maxlength="12" .value=${lastInitials} /></label>
    <label>${say.dateWord()} <input name="madeOn" type="text" inputmode="numeric" autocomplete="off" size="10" maxlength="10" .value=${today} /></label></div>`;
}

/** What was filled into those places. */
export function readSignature(data: FormData): Pick<CorrectionDraft, 'reason' | 'initials' | 'madeOn'> {
  const typed = (name: string): string => String(data.get(name) ?? '');
  lastInitials = typed('initials').trim();
  return { reason: typed('reason'), initials: lastInitials, madeOn: typed('madeOn') };
}
