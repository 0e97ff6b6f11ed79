import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Correction } from '../../shared/corrections/correction.ts';
import { correctionWords } from '../../shared/corrections/correction-words.ts';
import { draftCorrection } from '../../shared/corrections/draft-correction.ts';
import { byEffect } from '../../shared/corrections/order-of-effect.ts';
import { plainUnit } from '../../shared/corrections/row-key-text.ts';
import * as say from '../../shared/messages/correcting.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import { actStyle } from './act-style.ts';
import { correctionSlipStyle } from './correction-slip-style.ts';
import { correctionsListStyle } from './corrections-list-style.ts';
import { readSignature, signature } from './signature.ts';

/** Corrections listed at first. */
const FIRST = 30;
/** What became of each is asked for at most so many. */
const MOST = 5000;

interface Fate {
  readonly status: string;
  readonly before: string;
  readonly rows: number;
}

/** Every correction of one cell, newest first: what it does, who signed it, what became of it, and the way back. */
@customElement('bv-corrections')
export class CorrectionsList extends LitElement {
  static override styles = [actStyle, correctionSlipStyle, correctionsListStyle];

  /** The corrections cell. */
  @property() cell = '';
  @property({ attribute: false }) host!: ViewHost;
  /** Only corrections of this unit, '' for all. */
  @property() unit = '';
  @state() private fates: ReadonlyMap<string, Fate> = new Map();
  @state() private restoring = '';
  @state() private fault = '';
  @state() private busy = false;
  @state() private all = false;

  private askedVersion = -1;
  private stopListening: (() => void) | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    this.stopListening = this.host.onChange(() => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopListening?.();
  }

  protected override willUpdate(changed: PropertyValues): void {
    const version = this.host.state(this.cell)?.version ?? -1;
    if (version === this.askedVersion && !changed.has('cell')) return;
    this.askedVersion = version;
    void this.askFates(version);
  }

  private async askFates(version: number): Promise<void> {
    try {
      const page = await this.host.rows(this.cell, { table: 'corrections', from: 0, to: MOST });
      if (version !== this.askedVersion) return;
      const rows = Math.min(page.total, MOST);
      const table = { rows, columns: page.columns };
      const [id, status, before] = ['id', 'status', 'before'].map((name) => textsOf(table, name));
      const touched = numbersOf(table, 'rows');
      this.fates = new Map(
        Array.from({ length: rows }, (_, at) => [
          textAt(id, at),
          { status: textAt(status, at), before: textAt(before, at), rows: touched[at] },
        ]),
      );
    } catch {
      // Not calculated yet, or just being calculated anew: the next version asks again.
      if (version === this.askedVersion) this.fates = new Map();
    }
  }

  private get corrections(): readonly Correction[] {
    const parameters = this.host.state(this.cell)?.parameters as { corrections?: readonly Correction[] } | undefined;
    const list = parameters?.corrections ?? [];
    const shown = this.unit === '' ? list : list.filter((one) => concerns(one, plainUnit(this.unit)));
    return [...shown].sort((a, b) => byEffect(b, a));
  }

  override render(): TemplateResult | typeof nothing {
    const { corrections } = this;
    if (corrections.length === 0) return this.unit === '' ? html`<p class="quiet">${say.noneYet()}</p>` : nothing;
    const shown = this.all ? corrections : corrections.slice(0, FIRST);
    return html`<h4>${this.unit === '' ? say.listHead() : say.listOfUnit(this.unit)}</h4>
      ${this.fault === '' || this.restoring !== '' ? nothing : html`<p class="fault" role="alert">${this.fault}</p>`}
      <ul>${shown.map((one) => this.line(one))}</ul>
      ${
        shown.length < corrections.length
          ? html`<button type="button" @click=${() => {
              this.all = true;
            }}>${say.moreCorrections(corrections.length)}</button>`
          : nothing
      }`;
  }

  private line(one: Correction): TemplateResult {
    const what = correctionWords(one);
    const fate = one.lifted ? undefined : this.fates.get(one.id);
    const status = one.lifted ? 'lifted' : (fate?.status ?? 'under way');
    const before = one.action === 'change' && fate?.status === 'applied' ? say.importedAs(fate.before) : '';
    return html`<li data-status=${status}><div>
        <p class="what">${what}${before === '' ? nothing : html` <span class="before">(${before})</span>`}</p>
        <p class="signed">${say.because(one.reason, one.initials, one.made_on)}</p>
        <p class="fate">${fateWords(status, fate?.rows ?? 0)}</p></div>
      <p class="acts">
        ${
          one.lifted
            ? html`<button type="button" ?disabled=${this.busy} aria-label=${say.layOnNamed(what)} @click=${() => this.lift(one, false)}>${say.layOn()}</button>`
            : html`<button type="button" ?disabled=${this.busy} aria-label=${say.liftNamed(what)} @click=${() => this.lift(one, true)}>${say.lift()}</button>`
        }
        ${
          one.action === 'set_aside' && status === 'applied'
            ? html`<button type="button" ?disabled=${this.busy} aria-label=${say.restoreNamed(what)} @click=${() => this.begin(one)}>${say.restore()}</button>`
            : nothing
        }</p>
      ${this.restoring === one.id ? this.restoreSlip(one) : nothing}</li>`;
  }

  private restoreSlip(one: Correction): TemplateResult {
    return html`<form aria-label=${say.restoreNamed(correctionWords(one))} @submit=${(event: SubmitEvent) => this.restore(event, one)}>
      <h4>${say.doRestore()}</h4>
      ${signature(this.host.today())}
      ${this.fault === '' ? nothing : html`<p class="fault" role="alert">${this.fault}</p>`}
      <p class="acts"><button class="strong" type="submit" ?disabled=${this.busy}>${say.makeIt()}</button>
        <button type="button" @click=${() => this.begin(undefined)}>${say.leaveIt()}</button></p>
    </form>`;
  }

  private begin(one: Correction | undefined): void {
    this.restoring = one?.id ?? '';
    this.fault = '';
  }

  private async restore(event: SubmitEvent, one: Correction): Promise<void> {
    event.preventDefault();
    if (!('row' in one)) return;
    const signed = readSignature(new FormData(event.currentTarget as HTMLFormElement));
    const nothingElse = { column: '', value: '', fire: '', state: '', otherUnit: '' };
    const drafted = draftCorrection({ doing: 'restore', ...nothingElse, ...signed }, one.row, one.row.unit);
    if (drafted.status === 'error') this.fault = drafted.message;
    if (drafted.status !== 'value') return;
    this.busy = true;
    this.fault = await this.host.correct(this.cell, { ...drafted.value });
    this.busy = false;
    if (this.fault === '') this.restoring = '';
  }

  private async lift({ id }: Correction, lifted: boolean): Promise<void> {
    this.busy = true;
    this.fault = await this.host.liftCorrection(this.cell, id, lifted);
    this.busy = false;
  }
}

function concerns(one: Correction, unit: string): boolean {
  const named = 'row' in one ? [one.row.unit] : one.action === 'merge_units' ? [one.from, one.to] : one.units;
  const renamed = one.action === 'change' && one.column === 'unit' ? [one.value] : [];
  return [...named, ...renamed].some((name) => plainUnit(name) === unit);
}

function fateWords(status: string, rows: number): string {
  switch (status) {
    case 'applied':
      return say.inEffect(rows);
    case 'overruled':
      return say.isOverruled();
    case 'lifted':
      return say.isLifted();
    case 'lost':
      return say.isLost();
    default:
      return say.isUnderWay();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-corrections': CorrectionsList;
  }
}
