import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/proposals.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';

const MOST = 400;
const KINDS = ['units', 'fuels', 'fires', 'states'] as const;

interface Entry {
  readonly kind: string;
  readonly key: string;
  readonly words: string;
  readonly evidence: string;
}

/** What evidence proposes and nobody accepted yet, a list a kind. */
@customElement('bv-namings')
export class NamingDesk extends LitElement {
  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: { rows(cell: string, range: RowRange): Promise<RowPage> };
  @state() private entries: readonly Entry[] = [];

  private askedVersion = -1;

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('cell') || this.cell.version === this.askedVersion) return;
    this.askedVersion = this.cell.version;
    void this.ask(this.cell.version);
  }

  private async ask(version: number): Promise<void> {
    const filter = { column: 'accepted', text: 'no' };
    const page = await this.host.rows(this.cell.name, { table: 'proposals', from: 0, to: MOST, filter });
    if (version !== this.askedVersion) return;
    const table = { rows: Math.min(page.total, MOST), columns: page.columns };
    const [kind, unit, wouldBe, evidence] = ['kind', 'unit', 'would_be', 'evidence'].map((name) =>
      textsOf(table, name),
    );
    const readings = numbersOf(table, 'readings');
    this.entries = Array.from({ length: table.rows }, (_, row) => {
      const [what, of] = [textAt(kind, row), textAt(unit, row)];
      return {
        kind: what,
        key: `${what}:${of}`,
        words: say.kindWords(what, of, readings[row], textAt(wouldBe, row)),
        evidence: textAt(evidence, row),
      };
    });
  }

  override render(): TemplateResult {
    const { accept = [] } = this.cell.parameters as { accept?: readonly string[] };
    return html`${KINDS.map(
      (kind) =>
        html`<bv-accepts .head=${say.kindHead(kind)} .entries=${this.entries.filter((entry) => entry.kind === kind)} .allKey=${kind}
          .cell=${this.cell.name} .accepted=${accept} .host=${this.host}></bv-accepts>`,
    )}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-namings': NamingDesk;
  }
}
