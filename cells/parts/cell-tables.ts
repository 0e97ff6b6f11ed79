import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState } from '../../shared/cell-state.ts';
import { plainCount, tablesOfCell } from '../../shared/messages/page.ts';
import { cellTablesStyle } from './cell-tables-style.ts';
import './readings-sheet.ts';
import './sheet-grid.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import './worked-sheet.ts';

/** The tables of one cell: a row of names where there are several, and the sheet of the chosen one. */
@customElement('bv-cell-tables')
export class CellTables extends LitElement {
  static override styles = cellTablesStyle;

  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: ViewHost;
  @state() private chosen = '';

  private readonly fetchRows: ViewHost['rows'] extends (cell: string, range: infer R) => infer P
    ? (range: R) => P
    : never = (range) => this.host.rows(this.cell.name, range);

  override render(): TemplateResult | typeof nothing {
    const tables = this.cell.description?.tables ?? [];
    if (tables.length === 0) return nothing;
    const shown = tables.find(({ table }) => table === this.chosen) ?? tables[0];
    const count = (table: string): number => this.cell.rows[table] ?? 0;
    return html`
      ${
        tables.length > 1
          ? html`<div class="names" role="group" aria-label=${tablesOfCell(this.cell.name)}>${tables.map(
              ({ table, title }) =>
                html`<button aria-pressed=${table === shown.table} @click=${() => {
                  this.chosen = table;
                }}>${title} <span class="count">${plainCount(count(table))}</span></button>`,
            )}</div>`
          : nothing
      }
      ${
        shown.table === 'accepted'
          ? html`<bv-readings-sheet .cell=${this.cell.name} .host=${this.host} .table=${shown} .rows=${count(shown.table)} .version=${this.cell.version} .fetchRows=${this.fetchRows}></bv-readings-sheet>`
          : shown.columns.some(({ worked }) => worked)
            ? html`<bv-worked-sheet .cell=${this.cell.name} .host=${this.host} .table=${shown} .rows=${count(shown.table)} .version=${this.cell.version} .fetchRows=${this.fetchRows}></bv-worked-sheet>`
            : html`<bv-sheet .table=${shown} .rows=${count(shown.table)} .version=${this.cell.version} .fetchRows=${this.fetchRows}></bv-sheet>`
      }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-cell-tables': CellTables;
  }
}
