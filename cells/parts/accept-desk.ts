import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState } from '../../shared/cell-state.ts';
import type { AcceptableSource } from '../../shared/corrections/acceptable.ts';
import type { Table } from '../../shared/table/table.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import './accept-list.ts';

const MOST = 400;

/** What a cell found and nobody accepted yet, a list a head; asked for again with every version of the cell. */
@customElement('bv-accept-desk')
export class AcceptDesk extends LitElement {
  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: Pick<ViewHost, 'rows' | 'setParameter'>;
  @property({ attribute: false }) source!: AcceptableSource;
  @state() private table: Table = { rows: 0, columns: new Map() };

  private askedVersion = -1;

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('cell') || this.cell.version === this.askedVersion) return;
    this.askedVersion = this.cell.version;
    void this.ask(this.cell.version);
  }

  private async ask(version: number): Promise<void> {
    const { table, filter } = this.source;
    const page = await this.host.rows(this.cell.name, { table, from: 0, to: MOST, ...(filter ? { filter } : {}) });
    if (version === this.askedVersion) this.table = { rows: Math.min(page.total, MOST), columns: page.columns };
  }

  override render(): TemplateResult {
    const { accept = [] } = this.cell.parameters as { accept?: readonly string[] };
    return html`${this.source
      .lists(this.table)
      .map(
        ({ head, allKey, entries }) =>
          html`<bv-accepts .head=${head} .entries=${entries} .allKey=${allKey} .cell=${this.cell.name} .accepted=${accept} .host=${this.host}></bv-accepts>`,
      )}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-accept-desk': AcceptDesk;
  }
}
