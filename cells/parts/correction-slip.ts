import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { CORRECTABLE } from '../../shared/corrections/corrected-value.ts';
import type { RowKey } from '../../shared/corrections/correction.ts';
import { correctionWords } from '../../shared/corrections/correction-words.ts';
import { type CorrectionDraft, draftCorrection } from '../../shared/corrections/draft-correction.ts';
import * as say from '../../shared/messages/correcting.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import { actStyle } from './act-style.ts';
import type { ChosenReading } from './chosen-reading.ts';
import { correctionSlipStyle } from './correction-slip-style.ts';
import { plainWords } from './shown-value.ts';
import { readSignature, signature } from './signature.ts';

type Doing = CorrectionDraft['doing'];

const FIRES = ['high', 'low', 'mid', 'single'];
const STATES = ['as_found', 'as_left', 'trial'];
/** Columns that a slip has places of their own for. */
const NAMED = new Set(['fire', 'state']);
const VALUES = readingsSchema.filter(({ name }) => CORRECTABLE.includes(name) && !NAMED.has(name));

/** Filled in and signed, it becomes a correction of one reading. `bv-slip-done` tells that it is made or left. */
@customElement('bv-correction-slip')
export class CorrectionSlip extends LitElement {
  static override styles = [actStyle, correctionSlipStyle];

  @property({ attribute: false }) host!: ViewHost;
  /** The cell whose readings are corrected. */
  @property() cell = '';
  @property({ attribute: false }) reading!: ChosenReading;
  @state() private doing: Doing = 'set_aside';
  @state() private column = '';
  @state() private units: readonly string[] = [];
  @state() private texts: readonly string[] = [];
  @state() private fault = '';
  @state() private busy = false;

  override connectedCallback(): void {
    super.connectedCallback();
    const { column } = this.reading;
    if (NAMED.has(column)) this.doing = column as Doing;
    else if (VALUES.some(({ name }) => name === column && name !== 'unit')) this.doing = 'change';
    this.column = VALUES.some(({ name }) => name === column) ? column : 'o2_pct';
    void this.host.words(this.cell, this.reading.range.table, 'unit').then((units) => {
      this.units = units;
    });
    void this.learnTexts();
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('input:checked')?.focus());
  }

  override render(): TemplateResult {
    const { words, seen, unit } = this.reading;
    const pick = (doing: Doing, text: string): TemplateResult =>
      html`<label class="pick"><input type="radio" name="doing" .value=${doing} .checked=${this.doing === doing} @change=${() => this.choose(doing)} /> ${text}</label>`;
    return html`<form aria-label=${say.slipOf(words)} @submit=${this.submit} @keydown=${this.onKey}>
      <h4>${say.slipHead()}</h4>
      <p class="of">${say.chosenReading(words, seen.file, seen.line)}</p>
      <fieldset><legend>${say.whatIsWrong()}</legend>
        ${pick('set_aside', say.doSetAside())}${pick('change', say.doChange())}${pick('fire', say.doFire())}
        ${pick('state', say.doState())}${pick('merge_units', say.doMerge(unit))}${pick('swap_units', say.doSwap())}
      </fieldset>
      ${this.particulars()}
      ${signature(this.host.today())}
      ${this.fault === '' ? nothing : html`<p class="fault" role="alert">${this.fault}</p>`}
      <p class="acts"><button class="strong" type="submit" ?disabled=${this.busy}>${say.makeIt()}</button>
        <button type="button" @click=${this.leave}>${say.leaveIt()}</button>
        <span role="status">${this.busy ? say.underWay() : ''}</span></p>
    </form>`;
  }

  private particulars(): TemplateResult | typeof nothing {
    switch (this.doing) {
      case 'change':
        return this.newValue();
      case 'fire':
        return html`<p class="fill">${wordChoice('fire', say.fireShallBe(), FIRES, this.reading.fire)}</p>`;
      case 'state':
        return html`<p class="fill">${wordChoice('state', say.stateShallBe(), STATES, this.reading.state)}</p>`;
      case 'merge_units':
        return this.otherUnit(say.belongsToUnit(this.reading.unit));
      case 'swap_units':
        return this.otherUnit(say.mixedUpWith(this.reading.unit, this.reading.day));
      default:
        return nothing;
    }
  }

  private newValue(): TemplateResult {
    const known = VALUES.find(({ name }) => name === this.column) ?? VALUES[0];
    return html`<div class="fill"><label>${say.whichValue()} <select name="column" aria-label=${say.whichValue()} @change=${this.chooseColumn}>
        ${VALUES.map(({ name, title }) => html`<option value=${name} ?selected=${name === this.column}>${title}</option>`)}
      </select></label>
      <span class="quiet">${say.isNow(this.reading.shown.get(known.name) ?? '')}</span>
      <label>${say.shallBe(known.shownUnit)} <input name="value" type="text" autocomplete="off" list="texts" inputmode=${known.kind === 'number' ? 'decimal' : 'text'} size="12" /></label>
      <datalist id="texts">${this.texts.map((text) => html`<option value=${text}></option>`)}</datalist>
      <span class="quiet">${say.emptyIsUnknown()}</span></div>`;
  }

  private otherUnit(label: string): TemplateResult {
    return html`<div class="fill"><label>${label} <input name="otherUnit" type="text" autocomplete="off" list="units" size="16" /></label>
      <datalist id="units">${this.units.map((unit) => (unit === this.reading.unit ? nothing : html`<option value=${unit}></option>`))}</datalist></div>`;
  }

  private choose(doing: Doing): void {
    this.doing = doing;
    this.fault = '';
  }

  private chooseColumn(event: Event): void {
    this.column = (event.target as HTMLSelectElement).value;
    void this.learnTexts();
  }

  private async learnTexts(): Promise<void> {
    const { column } = this;
    const isText = VALUES.some(({ name, kind }) => name === column && kind === 'text');
    const texts = isText ? await this.host.words(this.cell, this.reading.range.table, column) : [];
    if (column === this.column) this.texts = texts.slice(0, 500);
  }

  private async submit(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const data = new FormData(event.currentTarget as HTMLFormElement);
    const typed = (name: string): string => String(data.get(name) ?? '');
    const draft: CorrectionDraft = {
      doing: this.doing,
      column: typed('column'),
      value: typed('value'),
      fire: typed('fire'),
      state: typed('state'),
      otherUnit: typed('otherUnit'),
      ...readSignature(data),
    };
    this.busy = true;
    this.fault = await this.make(draft);
    this.busy = false;
  }

  /** '' where the correction is made, else why not. */
  private async make(draft: CorrectionDraft): Promise<string> {
    const { range, place, seen, unit } = this.reading;
    let row: RowKey;
    try {
      row = await this.host.readingKey(this.cell, range, place, seen);
    } catch (cause) {
      return cause instanceof Error ? cause.message : String(cause);
    }
    const drafted = draftCorrection(draft, row, unit);
    if (drafted.status !== 'value') return drafted.status === 'error' ? drafted.message : '';
    const refusal = await this.host.correct(this.cell, { ...drafted.value });
    if (refusal === '') this.tellDone(say.made(correctionWords(drafted.value)));
    return refusal;
  }

  private onKey(event: KeyboardEvent): void {
    if (event.key === 'Escape') this.leave();
  }

  private leave(): void {
    this.tellDone('');
  }

  /** What was made in words, '' where nothing was. */
  private tellDone(words: string): void {
    this.dispatchEvent(new CustomEvent('bv-slip-done', { detail: words, bubbles: true, composed: true }));
  }
}

function wordChoice(name: string, label: string, words: readonly string[], now: string): TemplateResult {
  return html`<label>${label} <select name=${name}>${words.map(
    (word) => html`<option value=${word} ?selected=${word === now}>${plainWords(word)}</option>`,
  )}</select></label>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-correction-slip': CorrectionSlip;
  }
}
