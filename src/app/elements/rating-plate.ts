import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import {
  lightWord,
  notADay,
  openOwn,
  plateAsOf,
  plateDuplicates,
  plateNotebook,
  plateReadings,
  plateSetAside,
  productName,
  redoWord,
  saveFiles,
  saveNotebook,
  undoWord,
} from '../../../shared/messages/page.ts';
import { openPanel } from '../../../shared/messages/two-notebooks.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { LightElement } from './light-element.ts';

export interface PlateFigures {
  readonly readings: string;
  readonly setAside: string;
  readonly duplicates: string;
}

/** The head of the page, a riveted plate as on a burner: what this notebook is, and from which day it looks. */
@customElement('bv-plate')
export class RatingPlate extends LightElement {
  @property() override title = '';
  @property() asOf = '';
  @property({ attribute: false }) figures: PlateFigures = { readings: '', setAside: '', duplicates: '' };
  @property({ type: Boolean }) canUndo = false;
  @property({ type: Boolean }) canRedo = false;
  @property() light = 'device';
  @state() private fault = '';

  override render(): TemplateResult {
    const { readings, setAside, duplicates } = this.figures;
    const field = (label: string, value: string): TemplateResult | typeof nothing =>
      value === '' ? nothing : html`<div><dt>${label}</dt><dd>${value}</dd></div>`;
    return html`<header class="plate">
      <p class="product">${FLAME}<span>${productName()}</span></p>
      <div class="stamped">
        <h1><span class="label">${plateNotebook()}</span> ${this.title}</h1>
        <dl>
          <div><dt><label for="as-of">${plateAsOf()}</label></dt><dd><input id="as-of" class="blank" type="text" inputmode="numeric" autocomplete="off" maxlength="10"
            aria-describedby="as-of-fault" aria-invalid=${this.fault === '' ? 'false' : 'true'} .value=${live(this.asOf)} @change=${this.onAsOf} /></dd></div>
          ${field(plateReadings(), readings)}${field(plateSetAside(), setAside)}${field(plateDuplicates(), duplicates)}
        </dl>
      </div>
      <p id="as-of-fault" class="fault" role="alert" ?hidden=${this.fault === ''}>${this.fault}</p>
      <div class="acts">
        <button type="button" class="act strong" @click=${() => this.tell('open')}>${openOwn()}</button>
        <button type="button" class="act" ?disabled=${!this.canUndo} @click=${() => this.tell('undo')}>${undoWord()}</button>
        <button type="button" class="act" ?disabled=${!this.canRedo} @click=${() => this.tell('redo')}>${redoWord()}</button>
        <button type="button" class="act" @click=${() => this.tell('save')}>${saveNotebook()}</button>
        <button type="button" class="act" @click=${() => this.tell('files')}>${saveFiles()}</button>
        <button type="button" class="act" @click=${() => this.tell('two')}>${openPanel()}</button>
        <button type="button" class="act light" @click=${() => this.tell('light')}>${lightWord(this.light)}</button>
      </div>
    </header>`;
  }

  private onAsOf(event: Event): void {
    const typed = (event.target as HTMLInputElement).value.trim();
    const isDay = /^\d{4}-\d{2}-\d{2}$/.test(typed) && Number.isFinite(readIsoDate(typed));
    this.fault = isDay ? '' : notADay(typed);
    if (isDay && typed !== this.asOf) this.dispatchEvent(new CustomEvent('bv-as-of', { detail: typed, bubbles: true }));
  }

  private tell(act: 'open' | 'undo' | 'redo' | 'save' | 'files' | 'two' | 'light'): void {
    this.dispatchEvent(new CustomEvent(`bv-${act}`, { bubbles: true }));
  }
}

const FLAME = html`<svg viewBox="0 0 32 34" width="34" height="36" aria-hidden="true"><path class="outer" d="M16 2c2 6 10 9 10 19a10 10 0 0 1-20 0c0-7 5-9 10-19z" /><path class="inner" d="M16 16c1 3 4.500 4 4.500 8a4.500 4.500 0 0 1-9 0c0-3 2.500-4 4.500-8z" /></svg>`;

declare global {
  interface HTMLElementTagNameMap {
    'bv-plate': RatingPlate;
  }
}
