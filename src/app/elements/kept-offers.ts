import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import * as say from '../../../shared/messages/keeping.ts';
import { bytesWord } from '../../../shared/messages/page.ts';
import type { KeptNotebook } from '../../storage/kept-store.ts';
import { LightElement } from './light-element.ts';

/** Tells the page which kept notebook is to be opened, or dropped. */
export class KeptChosen extends CustomEvent<{ readonly kept: KeptNotebook; readonly act: 'open' | 'drop' }> {
  constructor(kept: KeptNotebook, act: 'open' | 'drop') {
    super('bv-kept', { detail: { kept, act }, bubbles: true });
  }
}

/** Notebooks that the browser kept through a reload, a crash or a closed page, offered again. */
@customElement('bv-kept-offers')
export class KeptOffers extends LightElement {
  @property({ attribute: false }) offers: readonly KeptNotebook[] = [];
  /** The one whose drop is asked about. */
  @state() private dropping = '';

  override render(): TemplateResult | typeof nothing {
    const { offers } = this;
    if (offers.length === 0) return nothing;
    return html`<section class="kept" aria-labelledby="kept-head"><h2 id="kept-head">${say.offersHead(offers.length)}</h2>
      <ul>${offers.map((kept) => this.line(kept))}</ul></section>`;
  }

  private line(kept: KeptNotebook): TemplateResult {
    const here = kept.files.filter(({ isKept }) => isKept);
    const asked = kept.files.flatMap(({ isKept, name }) => (isKept ? [] : [name])).join(', ');
    const size = here.reduce((sum, file) => sum + file.size, 0);
    const tell = (act: 'open' | 'drop') => () => this.dispatchEvent(new KeptChosen(kept, act));
    const ask = (id: string) => () => {
      this.dropping = id;
    };
    return html`<li><p>${say.offered(kept.title, whenWords(kept.changedAt), kept.saved)} ${say.withFiles(here.length, bytesWord(size), asked)}</p>
      <p class="acts">${
        this.dropping === kept.id
          ? html`<button type="button" class="act strong" @click=${tell('drop')}>${say.dropForGood()}</button>
            <button type="button" class="act" @click=${ask('')}>${say.keepIt()}</button>`
          : html`<button type="button" class="act strong" aria-label=${say.openAgainNamed(kept.title)} @click=${tell('open')}>${say.openAgain()}</button>
            <button type="button" class="act" aria-label=${say.dropItNamed(kept.title)} @click=${ask(kept.id)}>${say.dropIt()}</button>`
      }</p></li>`;
  }
}

/** The user's own day and clock: 2026-11-25 13:40. */
function whenWords(ms: number): string {
  const when = new Date(ms);
  const two = (value: number): string => String(value).padStart(2, '0');
  const clock = `${two(when.getHours())}:${two(when.getMinutes())}`;
  if (when.toDateString() === new Date().toDateString()) return say.today(clock);
  return `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())} ${clock}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-kept-offers': KeptOffers;
  }
}
