import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import { accountAddsUp, accountHead, accountShort } from '../../shared/messages/page.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';

/** Files shown one by one; the sheet beside has them all. */
const MOST_FILES = 12;

interface FileAccount {
  readonly file: string;
  readonly read: number;
  readonly accepted: number;
  readonly setAside: number;
  readonly duplicates: number;
}

/** What became of every reading of every file: three counts that add up to what was read, drawn to scale. */
@customElement('bv-account')
export class AccountList extends LitElement {
  static override styles = css`
    ul {
      list-style: none;
      margin: 0 0 20px;
      padding: 0;
    }
    li {
      margin: 0 0 10px;
      font-variant-numeric: tabular-nums;
    }
    b {
      overflow-wrap: anywhere;
    }
    svg {
      display: block;
      width: 100%;
      height: 14px;
      margin-top: 4px;
    }
    .read {
      fill: var(--gas);
      stroke: var(--casing);
      stroke-width: 1;
    }
    .aside {
      fill: var(--warning);
      stroke: var(--casing);
      stroke-width: 1;
    }
    .double {
      fill: var(--sheet);
      stroke: var(--casing);
      stroke-width: 1;
    }
  `;

  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: { rows(cell: string, range: RowRange): Promise<RowPage> };
  @state() private files: readonly FileAccount[] = [];

  private askedVersion = -1;

  override willUpdate(): void {
    if (this.cell.version === this.askedVersion) return;
    this.askedVersion = this.cell.version;
    void this.ask(this.cell.version);
  }

  private async ask(version: number): Promise<void> {
    const page = await this.host.rows(this.cell.name, { table: 'account', from: 0, to: MOST_FILES });
    if (version !== this.askedVersion) return;
    const table = { rows: Math.min(page.total, MOST_FILES), columns: page.columns };
    const file = textsOf(table, 'file');
    const [read, accepted, setAside, duplicates] = ['rows_read', 'accepted', 'set_aside', 'duplicates'].map((name) =>
      numbersOf(table, name),
    );
    this.files = Array.from({ length: table.rows }, (_, row) => ({
      file: textAt(file, row),
      read: read[row],
      accepted: accepted[row],
      setAside: setAside[row],
      duplicates: duplicates[row],
    }));
  }

  override render(): TemplateResult | typeof nothing {
    if (this.files.length === 0) return nothing;
    return html`<ul aria-label=${accountHead()}>${this.files.map((file) => this.line(file))}</ul>`;
  }

  private line({ file, read, accepted, setAside, duplicates }: FileAccount): TemplateResult {
    const share = (count: number): number => (read > 0 ? (count / read) * 100 : 0);
    // A single row that left must still be seen on a bar of thousands.
    const seen = (count: number): number => (count > 0 ? Math.max(share(count), 0.7) : 0);
    const [aside, double] = [seen(setAside), seen(duplicates)];
    const kept = Math.max(0, 100 - aside - double);
    const addsUp = accepted + setAside + duplicates === read;
    return html`<li><b>${file}</b>: ${addsUp ? accountAddsUp(read, accepted, setAside, duplicates) : accountShort(read, accepted, setAside, duplicates)}
      <svg viewBox="0 0 100 14" preserveAspectRatio="none" aria-hidden="true">
        <rect class="read" x="0" y="1" width=${kept} height="12" vector-effect="non-scaling-stroke" />
        <rect class="aside" x=${kept} y="1" width=${aside} height="12" vector-effect="non-scaling-stroke" />
        <rect class="double" x=${kept + aside} y="1" width=${double} height="12" vector-effect="non-scaling-stroke" />
      </svg></li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-account': AccountList;
  }
}
