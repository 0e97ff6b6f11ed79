import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ShownColumn, ShownTable } from '../../shared/cell.ts';
import type { RowPage, RowRange } from '../../shared/cell-state.ts';
import { DERIVED_COLUMNS } from '../../shared/combustion/derived-columns.ts';
import { itsFigures } from '../../shared/messages/working.ts';
import { derivedSchema } from '../../shared/schemas/derived.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { foldStyle } from './fold-style.ts';

const KEY: readonly string[] = ['taken_at', 'fire', 'state'];
const isDerived = (name: string): boolean => DERIVED_COLUMNS.some((column) => column === name);
const FIGURES: ShownTable = {
  table: 'derived',
  title: 'Derived numbers',
  columns: shownColumns(derivedSchema)
    .filter(({ column }) => KEY.includes(column) || isDerived(column))
    .map((shown): ShownColumn => (isDerived(shown.column) ? { ...shown, worked: true } : shown)),
};

/** What was derived from the readings of one unit, folded; each number opens its working. */
@customElement('bv-derived-figures')
export class DerivedFigures extends LitElement {
  static override styles = foldStyle;

  @property({ attribute: false }) host!: { rows(cell: string, range: RowRange): Promise<RowPage> };
  /** The cell that derived them. */
  @property() cell = '';
  @property() unit = '';
  @property({ type: Number }) version = 0;
  @state() private isOpen = false;

  private filter: NonNullable<RowRange['filter']> = { column: 'unit', text: '' };
  private readonly fetchRows = (range: RowRange): Promise<RowPage> => this.host.rows(this.cell, range);

  override willUpdate(): void {
    // One object, so that the sheet is not asked again for what it has.
    if (this.filter.text !== this.unit) this.filter = { column: 'unit', text: this.unit };
  }

  override render(): TemplateResult {
    return html`<details @toggle=${(event: Event) => {
      this.isOpen = (event.target as HTMLDetailsElement).open;
    }}>
      <summary>${itsFigures(this.unit)}</summary>
      ${this.isOpen ? html`<bv-worked-sheet .cell=${this.cell} .host=${this.host} .table=${FIGURES} .rows=${1} .version=${this.version} .filter=${this.filter} .fetchRows=${this.fetchRows}></bv-worked-sheet>` : nothing}
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-derived-figures': DerivedFigures;
  }
}
