import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { styleMap } from 'lit/directives/style-map.js';
import type { ShownColumn, ShownTable } from '../../shared/cell.ts';
import type { RowPage, RowRange } from '../../shared/cell-state.ts';
import { noRows, sheetLabel, sheetPlace, sortHint, unknownValue, valueUnderWay } from '../../shared/messages/page.ts';
import { columnsInView, columnWidths, headPx, heldColumns } from './sheet-columns.ts';
import { type FoundRow, SheetPages } from './sheet-pages.ts';
import { sheetStyle } from './sheet-style.ts';
import { lastTop, positionAfter, railPx, type SheetGeometry, scrollAtTop, topShowing } from './sheet-window.ts';
import { safeToPaste, shownValue, UNKNOWN_MARK } from './shown-value.ts';
import { TurnElement } from './turn-element.ts';

const ROW_PX = 38;
const VIEW_ROWS = 11.5;
const SCROLLBAR_PX = 15;
/** The sideways position counts in steps, so that a scroll of a few pixels draws nothing. */
const SIDE_STEP_PX = 160;
type Order = NonNullable<RowRange['sort']>;

/** Tells which value of which row the user stands on. */
export class SheetPlace extends CustomEvent<{
  readonly range: RowRange;
  /** Within the order and the filter of the range. */
  readonly place: number;
  readonly column: string;
  readonly row: FoundRow;
}> {
  constructor(detail: SheetPlace['detail']) {
    super('bv-place', { detail, bubbles: true, composed: true });
  }
}

/** A window onto any number of rows of one result table; rows come from the worker as they are looked at. */
@customElement('bv-sheet')
export class SheetGrid extends TurnElement {
  static override styles = sheetStyle;

  @property({ attribute: false }) table!: ShownTable;
  @property({ attribute: false }) fetchRows!: (range: RowRange) => Promise<RowPage>;
  @property({ type: Number }) rows = 0;
  /** A new version asks for the rows again. */
  @property({ type: Number }) version = 0;
  @property({ attribute: false }) filter: RowRange['filter'];
  /** Said of each number that shows its working when it is chosen; '' where nothing listens. */
  @property() workedHint = '';

  @state() private top = 0;
  @state() private order: Order | undefined;
  /** Row -1 is the head. */
  @state() private here = { row: -1, column: 0 };

  /** Height that the rows have; a scroll bar below may take some of it, or none. */
  @state() private viewPx = VIEW_ROWS * ROW_PX;

  /** Where the view begins sideways, in steps, and how wide it is. */
  @state() private sideways = 0;
  @state() private wide = 0;

  private pages: SheetPages | undefined;
  /** Pages of the version before, shown until the new ones are at hand. */
  private previous: SheetPages | undefined;
  private readonly size = new ResizeObserver(() => this.fit());
  private widths: number[] = [];
  private measured = false;
  private headPx = 46;
  private numbers: ReadonlySet<string> = new Set();
  private scrollPx = 0;
  private moveFocus = false;
  private sized: HTMLElement | undefined;

  override willUpdate(changed: PropertyValues): void {
    const fresh = ['table', 'version', 'filter', 'order', 'rows'].some((name) => changed.has(name));
    if (!fresh) return;
    if (changed.has('table') && !this.sameTable(changed.get('table'))) this.measured = false;
    this.pages?.drop();
    // What is drawn stays drawn until its successor is at hand, so that nothing flickers.
    this.previous =
      changed.has('table') && !this.sameTable(changed.get('table')) ? undefined : (this.pages ?? this.previous);
    const whole = this.wholeRange;
    this.pages = new SheetPages(
      (range) => this.fetchRows({ ...whole, ...range }),
      () => {
        this.previous = undefined;
        this.requestUpdate();
      },
    );
    this.top = Math.min(this.top, lastTop(this.geometry));
  }

  private get wholeRange(): RowRange {
    const { order, filter } = this;
    const range = { table: this.table.table, from: 0, to: this.rows };
    return { ...range, ...(order ? { sort: order } : {}), ...(filter ? { filter } : {}) };
  }

  /** A cell that was calculated anew describes the same table in a new object. */
  private sameTable(before: ShownTable | undefined): boolean {
    const names = ({ table, columns }: ShownTable): string => [table, ...columns.map(({ column }) => column)].join(' ');
    return before !== undefined && names(before) === names(this.table);
  }

  private get total(): number {
    return this.filter ? (this.pages?.total ?? this.rows) : this.rows;
  }

  private get geometry(): SheetGeometry {
    return { rows: this.total, rowPx: ROW_PX, viewPx: this.total > VIEW_ROWS ? this.viewPx : this.total * ROW_PX };
  }

  override render(): TemplateResult {
    const { table, total } = this;
    if (total === 0) return html`<p class="note">${noRows(table.title)}</p>`;
    this.measure();
    const geometry = this.geometry;
    const columns = [...this.widths.map((px) => `${px}px`), 'minmax(0, 1fr)'].join(' ');
    const wide = this.widths.reduce((sum, px) => sum + px, 0);
    const first = Math.floor(this.top);
    const last = Math.min(total, first + Math.ceil(geometry.viewPx / ROW_PX) + 1);
    const from = this.sideways * SIDE_STEP_PX;
    const drawn = columnsInView(this.widths, heldColumns(table.columns), this.here.column, from, this.wide || 1600);
    const rows = Array.from({ length: last - first }, (_, i) => this.row(first + i, drawn));
    return html`
      <div class="scroll" role="grid" aria-label=${sheetLabel(table.title, total)} aria-rowcount=${total + 1}
        aria-colcount=${table.columns.length} style=${styleMap({ '--columns': columns, '--row': `${ROW_PX}px`, '--head': `${this.headPx}px`, maxHeight: `${Math.min(total, VIEW_ROWS) * ROW_PX + this.headPx + SCROLLBAR_PX}px` })}
        @scroll=${this.onScroll} @keydown=${this.onKey} @copy=${this.onCopy}>
        <div class="rail" role="presentation" style=${styleMap({ height: `${railPx(geometry) + this.headPx}px`, minWidth: `${wide}px` })}>
          <div class="head" role="row" aria-rowindex="1">${table.columns.map((column, i) => this.headCell(column, i))}</div>
          <div class="window" role="rowgroup" style=${styleMap({ top: `${this.headPx}px`, height: `${geometry.viewPx}px` })}>
            <div role="presentation" style=${styleMap({ transform: `translateY(${Math.round((first - this.top) * ROW_PX)}px)` })}>${rows}</div>
          </div>
        </div>
      </div>
      ${total > VIEW_ROWS ? html`<p class="note" aria-live="off">${sheetPlace(first + 1, Math.min(total, Math.floor(this.top + VIEW_ROWS)), total)}</p>` : nothing}`;
  }

  private headCell(column: ShownColumn, index: number): TemplateResult {
    const order = this.order?.column !== column.column ? 'none' : this.order.descending ? 'descending' : 'ascending';
    const mark = order === 'none' ? '' : order === 'ascending' ? ' ▲' : ' ▼';
    const here = this.here.row === -1 && this.here.column === index;
    return html`<div role="columnheader" style="grid-column:${index + 1}" aria-colindex=${index + 1} aria-sort=${order}
      class=${classMap({ number: this.isNumber(column), held: index < heldColumns(this.table.columns) })}>
      <button tabindex=${here ? 0 : -1} aria-label=${sortHint(`${column.title} ${column.unit}`.trim(), order)}
        @click=${() => this.sortBy(column, index)}>
        <span>${column.title}<span class="order">${mark}</span></span>
        ${column.unit ? html`<span class="unit">${column.unit}</span>` : nothing}
      </button></div>`;
  }

  private row(row: number, drawn: readonly number[]): TemplateResult {
    const found = this.pages?.row(row) ?? this.previous?.peek(row);
    const held = heldColumns(this.table.columns);
    return html`<div class="row" role="row" aria-rowindex=${row + 2}>${drawn.map((index) => {
      const column = this.table.columns[index];
      const text = found ? shownValue(column, found.columns.get(column.column), found.index) : '…';
      const here = this.here.row === row && this.here.column === index;
      return html`<div role="gridcell" style="grid-column:${index + 1}" aria-colindex=${index + 1} tabindex=${here ? 0 : -1}
        class=${classMap({ number: this.isNumber(column), held: index < held, unknown: text === '', worked: this.workedHint !== '' && column.worked === true })}
        aria-description=${this.workedHint !== '' && column.worked ? this.workedHint : nothing}
        aria-label=${found ? (text === '' ? unknownValue() : nothing) : valueUnderWay()}
        title=${text.length > 40 ? text : nothing}
        @click=${() => this.goTo(row, index)}>${text === '' ? UNKNOWN_MARK : text}</div>`;
    })}</div>`;
  }

  private isNumber(column: ShownColumn): boolean {
    return this.numbers.has(column.column);
  }

  private measure(): void {
    if (this.measured) return;
    const sample = this.pages?.row(0);
    const px = Number.parseFloat(getComputedStyle(this).fontSize) || 19;
    this.widths = columnWidths(this.table.columns, sample?.columns, this.total, px * 0.54);
    this.headPx = headPx(this.table.columns, this.widths, px * 0.54);
    this.measured = sample !== undefined;
    this.numbers = new Set(
      [...(sample?.columns ?? [])].filter(([, { kind }]) => kind === 'number').map(([name]) => name),
    );
  }

  private onScroll(event: Event): void {
    const scroller = event.currentTarget as HTMLElement;
    const scroll = scroller.scrollTop;
    this.sideways = Math.floor(scroller.scrollLeft / SIDE_STEP_PX);
    if (scroll === this.scrollPx) return;
    const next = positionAfter(this.geometry, { scrollPx: this.scrollPx, top: this.top }, scroll);
    this.scrollPx = next.scrollPx;
    this.top = next.top;
  }

  private sortBy(column: ShownColumn, index: number): void {
    const same = this.order?.column === column.column;
    this.order = !same
      ? { column: column.column, descending: false }
      : this.order?.descending
        ? undefined
        : { column: column.column, descending: true };
    this.here = { row: -1, column: index };
    // Another order begins at its beginning.
    this.top = 0;
    this.scrollPx = 0;
    this.scroller?.scrollTo({ top: 0 });
  }

  private goTo(row: number, column: number): void {
    this.here = { row, column };
    this.moveFocus = true;
    const found = row < 0 ? undefined : this.pages?.row(row);
    if (found) {
      const { column: name } = this.table.columns[column];
      this.dispatchEvent(new SheetPlace({ range: this.wholeRange, place: row, column: name, row: found }));
    }
    if (row >= 0) {
      const top = topShowing(this.geometry, this.top, row);
      if (top !== this.top) {
        this.top = top;
        this.scrollPx = scrollAtTop(this.geometry, top);
        this.scroller?.scrollTo({ top: this.scrollPx });
      }
    }
  }

  /** Puts the focus back where the user stands. */
  focusHere(): void {
    this.moveFocus = true;
    this.requestUpdate();
  }

  private get scroller(): HTMLElement | null {
    return this.renderRoot.querySelector('.scroll');
  }

  private onKey(event: KeyboardEvent): void {
    const { row, column } = this.here;
    const [lastRow, lastColumn, page] = [this.total - 1, this.table.columns.length - 1, Math.floor(VIEW_ROWS) - 1];
    const all = event.ctrlKey || event.metaKey;
    const targets: Record<string, () => [number, number]> = {
      ArrowDown: () => [Math.min(lastRow, row + 1), column],
      ArrowUp: () => [Math.max(-1, row - 1), column],
      ArrowRight: () => [row, Math.min(lastColumn, column + 1)],
      ArrowLeft: () => [row, Math.max(0, column - 1)],
      PageDown: () => [Math.min(lastRow, Math.max(row, 0) + page), column],
      PageUp: () => [Math.max(0, row - page), column],
      Home: () => [all ? 0 : row, 0],
      End: () => [all ? lastRow : row, lastColumn],
    };
    const target = targets[event.key];
    if (!target || event.altKey) return;
    event.preventDefault();
    this.goTo(...target());
  }

  /** Copies the row that holds the focus, tab between values, unless the user marked text of their own. */
  private onCopy(event: ClipboardEvent): void {
    const found = this.here.row < 0 ? undefined : this.pages?.row(this.here.row);
    if (!found || document.getSelection()?.toString()) return;
    const values = this.table.columns.map((column) =>
      safeToPaste(shownValue(column, found.columns.get(column.column), found.index)),
    );
    event.clipboardData?.setData('text/plain', values.join('\t'));
    event.preventDefault();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.size.disconnect();
  }

  /** The box decides its height only once it is drawn: a scroll bar below may take some of it. */
  private fit(): void {
    this.wide = this.scroller?.clientWidth ?? 0;
    const inside = (this.scroller?.clientHeight ?? 0) - this.headPx;
    if (this.total > VIEW_ROWS && inside > ROW_PX) this.viewPx = inside;
  }

  override updated(): void {
    const { scroller } = this;
    if (scroller && scroller !== this.sized) {
      this.size.disconnect();
      this.size.observe(scroller);
      this.sized = scroller;
    }
    if (!this.moveFocus) return;
    this.moveFocus = false;
    const target = this.renderRoot.querySelector<HTMLElement>(
      '[role=gridcell][tabindex="0"], .head button[tabindex="0"]',
    );
    target?.focus({ preventScroll: this.here.row >= 0 && this.here.column === 0 });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-sheet': SheetGrid;
  }
}
