import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ShownTable } from '../../shared/cell.ts';
import type { RowPage, RowRange } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import type { SheetPlace } from './sheet-grid.ts';
import './sheet-grid.ts';
import './working-view.ts';
import type { WorkingAsker } from './working-view.ts';

/** A sheet whose derived numbers open their working below it: by a click, or by Enter where one stands. */
@customElement('bv-worked-sheet')
export class WorkedSheet extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    .hint {
      margin: 8px 0 0;
      font-size: 0.88rem;
      color: var(--ink-2);
    }
    bv-working {
      margin-top: 14px;
    }
    @media print {
      .hint {
        display: none;
      }
    }
  `;

  @property() cell = '';
  @property({ attribute: false }) host!: WorkingAsker;
  @property({ attribute: false }) table!: ShownTable;
  @property({ type: Number }) rows = 0;
  @property({ type: Number }) version = 0;
  @property({ attribute: false }) filter: RowRange['filter'];
  @property({ attribute: false }) fetchRows!: (range: RowRange) => Promise<RowPage>;
  @state() private opened: NumberPlace | undefined;

  private here: NumberPlace | undefined;

  override willUpdate(changed: PropertyValues): void {
    const before = changed.get('table') as ShownTable | undefined;
    if (before && before.table !== this.table.table) this.opened = undefined;
  }

  override render(): TemplateResult {
    return html`<bv-sheet .table=${this.table} .rows=${this.rows} .version=${this.version} .filter=${this.filter}
        .fetchRows=${this.fetchRows} .workedHint=${say.workedNumber()} @bv-place=${this.onPlace} @click=${this.onClick} @keydown=${this.onKey}></bv-sheet>
      ${this.rows === 0 ? nothing : html`<p class="hint">${say.workingHint()}</p>`}
      ${this.opened ? html`<bv-working .host=${this.host} .place=${this.opened} .version=${this.version} @bv-put-away=${this.putAway}></bv-working>` : nothing}`;
  }

  private onPlace({ detail }: SheetPlace): void {
    const { column, row } = detail;
    const isWorked = this.table.columns.some((shown) => shown.column === column && shown.worked);
    this.here = isWorked ? { cell: this.cell, column, row: row.row } : undefined;
  }

  private onClick(event: Event): void {
    if (event.composedPath().some((part) => (part as Element).getAttribute?.('role') === 'gridcell')) void this.open();
  }

  private onKey(event: KeyboardEvent): void {
    if (event.key !== 'Enter' || !this.here) return;
    event.preventDefault();
    void this.open();
  }

  private async open(): Promise<void> {
    if (!this.here) return;
    this.opened = this.here;
    await this.updateComplete;
    const working = this.renderRoot.querySelector('bv-working');
    await working?.updateComplete;
    working?.focus();
  }

  private putAway(): void {
    this.opened = undefined;
    this.renderRoot.querySelector('bv-sheet')?.focusHere();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-worked-sheet': WorkedSheet;
  }
}
