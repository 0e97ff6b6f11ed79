import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { CorrectionDone } from '../../shared/corrections/correction.ts';

import type { Proposal } from '../../shared/corrections/proposal.ts';
import { compareRaised } from '../../shared/limits/compare-raised.ts';
import * as say from '../../shared/messages/checks.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** The cell whose list is compared before and after the switch; a campus review calls it so. */
const RAISING = 'raise';
const MOST_RAISED = 5000;
const MOST_REPAIRS = 500;
const MOST_CHANGES = 12;

interface DeskHost {
  rows(cell: string, range: RowRange): Promise<RowPage>;
  setParameter(cell: string, parameter: string, value: unknown): Promise<void>;
}

/** The switch for suspect readings, with what it does to the raised units, and the repairs that the findings propose. */
@customElement('bv-check-desk')
export class CheckDesk extends LitElement {
  static override styles = css`
    :host { display: block; }
    .switch { display: flex; flex-wrap: wrap; gap: 8px 12px; align-items: center; margin: 0 0 10px; }
    button { font: inherit; font-size: 0.88rem; min-height: 44px; padding: 8px 16px; border: 2px solid var(--ink); background: transparent; color: var(--ink); cursor: pointer; }
    button[aria-pressed='true'] { background: var(--ink); color: var(--plate); }
    button:hover:not(:disabled):not([aria-pressed='true']) { background: var(--act-tint); }
    button:disabled { cursor: progress; }
    button:focus-visible { outline: 3px solid var(--act); outline-offset: 2px; }
    .change { margin: 0 0 20px; padding: 8px 16px; border-left: 4px solid var(--act); }
    .change p { margin: 0 0 4px; font-weight: 650; }
    ul { margin: 0; padding-left: 1.2em; }
  `;

  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: DeskHost;
  @state() private repairs: readonly Proposal[] = [];
  @state() private suspects = 0;
  @state() private changes: readonly string[] | undefined;
  @state() private busy = false;

  private askedVersion = -1;

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('cell') || this.cell.version === this.askedVersion) return;
    this.askedVersion = this.cell.version;
    void this.fetchRepairs(this.cell.version);
  }

  private get parameters(): { readonly readings: string; readonly suspects: 'in' | 'out' } {
    return this.cell.parameters as { readings: string; suspects: 'in' | 'out' };
  }

  private async fetchRepairs(version: number): Promise<void> {
    const page = await this.host.rows(this.cell.name, { table: 'repairs', from: 0, to: MOST_REPAIRS });
    const suspects = { column: 'severity', text: 'suspect' };
    const found = await this.host.rows(this.cell.name, { table: 'findings', from: 0, to: 1, filter: suspects });
    if (version !== this.askedVersion) return;
    this.suspects = found.total;
    const table = { rows: Math.min(page.total, MOST_REPAIRS), columns: page.columns };
    const [unit, finding, repair, corrections] = ['unit', 'finding', 'repair', 'corrections'].map((name) =>
      textsOf(table, name),
    );
    this.repairs = Array.from({ length: table.rows }, (_, row) => ({
      evidence: say.repairEvidence(textAt(unit, row), textAt(finding, row)),
      words: textAt(repair, row),
      corrections: JSON.parse(textAt(corrections, row)) as readonly CorrectionDone[],
    }));
  }

  override render(): TemplateResult {
    return html`${this.suspects > 0 || this.changes ? this.switch() : nothing}
      <bv-proposals .head=${say.repairsHead(this.repairs.length)} .proposals=${this.repairs} .host=${this.host} .target=${this.parameters.readings}></bv-proposals>`;
  }

  private switch(): TemplateResult {
    const { suspects } = this.parameters;
    const button = (value: 'in' | 'out', label: string): TemplateResult =>
      html`<button type="button" aria-pressed=${suspects === value} ?disabled=${this.busy} @click=${() => this.set(value)}>${label}</button>`;
    return html`<div class="switch" role="group" aria-label=${say.suspectsSwitch()}>
        <span>${say.suspectsSwitch()}</span>${button('in', say.suspectsUsed())}${button('out', say.suspectsLeftOut())}
        <span role="status">${this.busy ? say.comparing() : ''}</span>
      </div>
      ${
        this.changes
          ? html`<div class="change" role="status"><p>${say.raisedChange(suspects)}</p>
            <ul>${this.changes.slice(0, MOST_CHANGES).map((line) => html`<li>${line}</li>`)}</ul>
            ${this.changes.length > MOST_CHANGES ? html`<p>${say.moreChanges(this.changes.length - MOST_CHANGES)}</p>` : nothing}</div>`
          : nothing
      }`;
  }

  private async set(value: 'in' | 'out'): Promise<void> {
    if (value === this.parameters.suspects) return;
    this.busy = true;
    try {
      const before = await this.raised();
      await this.host.setParameter(this.cell.name, 'suspects', value);
      const after = await this.raised();
      this.changes = before && after ? compareRaised(before, after) : undefined;
    } finally {
      this.busy = false;
    }
  }

  /** The raised list as it stands; undefined in a notebook without one. */
  private async raised(): Promise<Table | undefined> {
    try {
      const page = await this.host.rows(RAISING, { table: 'raised', from: 0, to: MOST_RAISED });
      return { rows: Math.min(page.total, MOST_RAISED), columns: page.columns };
    } catch {
      return undefined;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-check-desk': CheckDesk;
  }
}
