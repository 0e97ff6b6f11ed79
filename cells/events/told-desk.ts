import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/proposals.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';

const MOST = 400;

/** Events that notes tell of and nobody accepted yet. */
@customElement('bv-told-events')
export class ToldDesk extends LitElement {
  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: { rows(cell: string, range: RowRange): Promise<RowPage> };
  @state() private entries: readonly { readonly key: string; readonly words: string; readonly evidence: string }[] = [];

  private askedVersion = -1;

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('cell') || this.cell.version === this.askedVersion) return;
    this.askedVersion = this.cell.version;
    void this.ask(this.cell.version);
  }

  private async ask(version: number): Promise<void> {
    const page = await this.host.rows(this.cell.name, { table: 'told-events', from: 0, to: MOST });
    if (version !== this.askedVersion) return;
    const table = { rows: Math.min(page.total, MOST), columns: page.columns };
    const [unit, event, note] = ['unit', 'event', 'note'].map((name) => textsOf(table, name));
    const on = numbersOf(table, 'on');
    this.entries = Array.from({ length: table.rows }, (_, row) => {
      const [of, day, what] = [textAt(unit, row), writeDay(on[row]), textAt(event, row)];
      return {
        key: `${of} ${day} ${what}`,
        words: say.eventWords(of, day, what),
        evidence: say.noteWords(textAt(note, row)),
      };
    });
  }

  override render(): TemplateResult {
    const { accept = [] } = this.cell.parameters as { accept?: readonly string[] };
    return html`<bv-accepts .head=${say.eventsHead()} .entries=${this.entries} .allKey=${'all'} .cell=${this.cell.name}
      .accepted=${accept} .host=${this.host}></bv-accepts>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-told-events': ToldDesk;
  }
}
