import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/register-gaps.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Filled } from './filled-row.ts';

const MOST = 2000;
const FIRST = 6;
const WORDS: Readonly<Record<string, readonly string[]>> = {
  fuel: ['natural_gas', 'propane', 'butane', 'lpg', 'no2_oil', 'no6_oil'],
  burner: ['premix', 'power', 'atmospheric'],
  air_source: ['room', 'outside'],
};

interface Gap {
  readonly unit: string;
  readonly field: string;
  readonly missing: string;
  readonly instead: string;
}

interface DeskHost {
  rows(cell: string, range: RowRange): Promise<RowPage>;
  setParameter(cell: string, parameter: string, value: unknown): Promise<void>;
}

/** What the register leaves empty, with what stands in its place, as a table that can be filled in. */
@customElement('bv-gaps')
export class GapDesk extends LitElement {
  static override styles = css`
    :host { display: block; margin: 0 0 22px; }
    th { white-space: nowrap; }
    h3 + p + .wide, .wide + button { margin-top: 8px; }
    h3 { margin: 0 0 4px; font-size: 1rem; }
    p { margin: 0 0 8px; color: var(--ink-2); }
    .wide { overflow-x: auto; }
    table { border-collapse: collapse; width: 100%; }
    th, td { text-align: left; padding: 4px 14px 4px 0; border-bottom: 1px solid var(--rule); vertical-align: middle; }
    thead th { font-size: 0.88rem; color: var(--ink-2); }
    input, select { font: inherit; color: inherit; background: var(--sheet); border: 2px solid var(--ink); min-height: 36px; padding: 2px 8px; width: 11em; box-sizing: border-box; }
    @media (max-width: 640px) {
      .gaps thead { display: none; }
      .gaps tr { display: grid; grid-template-columns: minmax(0, 1fr) 11em; gap: 0 12px; padding: 8px 0; border-bottom: 1px solid var(--rule); }
      .gaps :is(th, td) { border: 0; padding: 2px 0; }
      .gaps th { grid-column: 1 / -1; }
      .gaps [data-head]::before { content: attr(data-head); }
      .gaps [data-head] { grid-column: 1 / -1; grid-row: 3; color: var(--ink-2); font-size: 0.92rem; }
    }
    button { font: inherit; font-size: 0.88rem; min-height: 36px; padding: 4px 14px; border: 2px solid var(--ink); background: transparent; color: var(--ink); cursor: pointer; }
    button:hover { background: var(--act-tint); }
    button:focus-visible, input:focus-visible, select:focus-visible { outline: 3px solid var(--act); outline-offset: 2px; }
  `;

  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: DeskHost;
  @state() private gaps: readonly Gap[] = [];
  @state() private all = false;

  private askedVersion = -1;

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('cell') || this.cell.version === this.askedVersion) return;
    this.askedVersion = this.cell.version;
    void this.ask(this.cell.version);
  }

  private get filled(): readonly Filled[] {
    return (this.cell.parameters as { filled?: readonly Filled[] }).filled ?? [];
  }

  private async ask(version: number): Promise<void> {
    const page = await this.host.rows(this.cell.name, { table: 'gaps', from: 0, to: MOST });
    if (version !== this.askedVersion) return;
    const table = { rows: Math.min(page.total, MOST), columns: page.columns };
    const [unit, field, missing, instead] = ['unit', 'field', 'missing', 'instead'].map((name) => textsOf(table, name));
    this.gaps = Array.from({ length: table.rows }, (_, row) => ({
      unit: textAt(unit, row),
      field: textAt(field, row),
      missing: textAt(missing, row),
      instead: textAt(instead, row),
    }));
  }

  override render(): TemplateResult | typeof nothing {
    const { gaps, filled } = this;
    if (gaps.length + filled.length === 0) return nothing;
    const shown = this.all ? gaps : gaps.slice(0, FIRST);
    return html`${gaps.length > 0 ? html`<h3>${say.gapsHead(gaps.length, new Set(gaps.map(({ unit }) => unit)).size)}</h3><p>${say.gapsNote()}</p>` : nothing}
      ${shown.length > 0 ? html`<div class="wide"><table class="gaps"><thead><tr>${[say.unitHead(), say.missingHead(), say.insteadHead(), say.valueHead()].map((head) => html`<th scope="col">${head}</th>`)}</tr></thead><tbody>${shown.map((gap) => this.line(gap))}</tbody></table></div>` : nothing}
      ${
        shown.length < gaps.length
          ? html`<button type="button" @click=${() => {
              this.all = true;
            }}>${say.showAll(gaps.length)}</button>`
          : nothing
      }
      ${
        filled.length > 0
          ? html`<h3>${say.filledHead(filled.length)}</h3><div class="wide"><table><tbody>${filled.map(
              (one) =>
                html`<tr><th scope="row">${one.unit}</th><td>${one.field}</td><td>${one.value}</td>
                  <td><button type="button" aria-label=${`${say.empty()}: ${one.unit} ${one.field}`} @click=${() => this.set(filled.filter((other) => other !== one))}>${say.empty()}</button></td></tr>`,
            )}</tbody></table></div>`
          : nothing
      }`;
  }

  private line(gap: Gap): TemplateResult {
    const words = WORDS[gap.field];
    const label = say.labelOf(gap.unit, gap.missing);
    const take = (event: Event): void => this.fill(gap, (event.target as HTMLInputElement).value.trim());
    return html`<tr><th scope="row">${gap.unit}</th><td>${gap.missing}</td><td data-head=${`${say.insteadHead()}: `}>${gap.instead}</td>
      <td>${
        words
          ? html`<select aria-label=${label} @change=${take}><option value="">${say.choose()}</option>${words.map((word) => html`<option value=${word}>${word.replaceAll('_', ' ')}</option>`)}</select>`
          : html`<input type="number" min="0" step="any" aria-label=${label} @change=${take} />`
      }</td></tr>`;
  }

  private fill({ unit, field }: Gap, value: string): void {
    if (value === '') return;
    const others = this.filled.filter((one) => one.unit !== unit || one.field !== field);
    this.set([...others, { unit, field, value }]);
  }

  private set(filled: readonly Filled[]): void {
    void this.host.setParameter(this.cell.name, 'filled', filled);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-gaps': GapDesk;
  }
}
