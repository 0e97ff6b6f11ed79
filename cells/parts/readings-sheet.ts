import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ShownTable } from '../../shared/cell.ts';
import type { RowPage, RowRange } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/correcting.ts';
import { type ChosenReading, chosenReading } from './chosen-reading.ts';
import './correction-slip.ts';
import type { SheetPlace } from './sheet-grid.ts';
import './sheet-grid.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import { actStyle } from './act-style.ts';

/** A sheet of accepted readings, and below it the slip on which the one that the user stands on is corrected. */
@customElement('bv-readings-sheet')
export class ReadingsSheet extends LitElement {
  static override styles = [
    actStyle,
    css`
    :host {
      display: block;
    }
    .bar {
      display: flex;
      flex-wrap: wrap;
      gap: 8px 18px;
      align-items: center;
      margin: 8px 0 14px;
      min-height: 44px;
      font-size: 0.92rem;
    }
    .bar.quiet {
      color: var(--ink-2);
    }
    @media print {
      .bar {
        display: none;
      }
    }
  `,
  ];

  /** The cell that gives the readings, as imported or as corrected. */
  @property() cell = '';
  @property({ attribute: false }) host!: ViewHost;
  @property({ attribute: false }) table!: ShownTable;
  @property({ type: Number }) rows = 0;
  @property({ type: Number }) version = 0;
  @property({ attribute: false }) filter: RowRange['filter'];
  @property({ attribute: false }) fetchRows!: (range: RowRange) => Promise<RowPage>;
  @state() private chosen: ChosenReading | undefined;
  @state() private slip: ChosenReading | undefined;
  @state() private made = '';

  override render(): TemplateResult {
    return html`<bv-sheet .table=${this.table} .rows=${this.rows} .version=${this.version} .filter=${this.filter}
        .fetchRows=${this.fetchRows} @bv-place=${this.onPlace}></bv-sheet>
      ${this.slip ? html`<bv-correction-slip .host=${this.host} .cell=${this.cell} .reading=${this.slip} @bv-slip-done=${this.onDone}></bv-correction-slip>` : this.bar()}`;
  }

  private bar(): TemplateResult | typeof nothing {
    const { chosen, made } = this;
    if (made !== '') return html`<p class="bar" role="status">${made}</p>`;
    if (!chosen) return this.rows === 0 ? nothing : html`<p class="bar quiet">${say.chooseReading()}</p>`;
    return html`<p class="bar"><span>${say.chosenReading(chosen.words, chosen.seen.file, chosen.seen.line)}</span>
      <button type="button" @click=${() => {
        this.slip = chosen;
      }}>${say.correctIt()}</button></p>`;
  }

  private onPlace(event: SheetPlace): void {
    // An open slip is of the reading for which it was begun.
    if (this.slip) return;
    this.chosen = chosenReading(event.detail);
    this.made = '';
  }

  private onDone({ detail: made }: CustomEvent<string>): void {
    this.slip = undefined;
    this.made = made;
    if (made !== '') this.chosen = undefined;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-readings-sheet': ReadingsSheet;
  }
}
