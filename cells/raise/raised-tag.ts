import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { unsafeSVG } from 'lit/directives/unsafe-svg.js';
import type { ShownTable } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import { drawLanes } from '../../shared/lanes/draw-lanes.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import {
  chanceBy,
  checkFirst,
  expectWrong,
  itsReadings,
  lanesUnderWay,
  measuredFact,
  onFire,
  readingsUsed,
  reasonHead,
} from '../../shared/messages/page.ts';
import { percent } from '../../shared/messages/words.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import './derived-figures.ts';
import { foldStyle } from './fold-style.ts';
import { raisedTagStyle } from './raised-tag-style.ts';
import type { RaisedFinding, RaisedUnit } from './raised-units.ts';
import { WORKED_REASONS } from './worked-reasons.ts';

/** What shows how a number came about: the measured columns, then where they were read. */
const SHOWN_READINGS = new Set([
  'taken_at',
  'fire',
  'state',
  'o2_pct',
  'co2_pct',
  'co_ppm',
  'flue_C',
  'supply_static_Pa',
  'supply_running_Pa',
  'analyzer',
  'technician',
  'note',
  'source_file',
  'source_line',
]);
const READINGS: ShownTable = {
  table: 'accepted',
  title: 'Readings',
  columns: shownColumns(readingsSchema).filter(({ column }) => SHOWN_READINGS.has(column)),
};

/** What a tag asks of the page around it; it hands the whole of it on to the sheets in it. */
export interface RaisedHost {
  rows(cell: string, range: RowRange): Promise<RowPage>;
  lanes(cell: string, units: readonly string[]): Promise<readonly UnitLanes[]>;
  state(cell: string): CellState | undefined;
}

/** One raised unit: why, what to check first, how sure, the fire lanes, and the readings behind them. */
@customElement('bv-raised-tag')
export class RaisedTag extends LitElement {
  static override styles = [foldStyle, raisedTagStyle];

  /** The cell that raised it. */
  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: RaisedHost;
  @property({ attribute: false }) unit!: RaisedUnit;
  @property({ attribute: false }) lanes: UnitLanes | undefined;
  /** On a narrow screen the lanes are drawn small. */
  @property({ type: Boolean }) narrow = false;
  @state() private isOpen = false;

  private filter: RowRange['filter'];
  private fetching: { readonly cell: string; fetch(range: RowRange): Promise<RowPage> } | undefined;

  override render(): TemplateResult {
    const { lanes } = this;
    const { unit, findings } = this.unit;
    return html`<article class="tag" aria-label=${unit}><span class="hole" aria-hidden="true"></span>
      <div class="words">
        <div class="head"><h4>${unit}</h4><p class="place">${lanes?.place ?? ''}</p></div>
        ${findings.map((finding) => this.finding(finding))}
      </div>
      <div class="lanes">${lanes ? unsafeSVG(drawLanes(lanes, this.narrow ? 'small' : 'large')) : lanesUnderWay()}</div>
      ${this.readings(unit)}
      ${this.figures(unit)}
    </article>`;
  }

  /** From a raised unit to the readings behind it: the sheet is drawn once it is opened. */
  private readings(unit: string): TemplateResult | typeof nothing {
    const cell = (this.cell.parameters as { readings?: unknown }).readings;
    if (typeof cell !== 'string' || cell === '') return nothing;
    const { isOpen } = this;
    return html`<details .open=${isOpen} @toggle=${this.onToggle}>
      <summary>${itsReadings(unit)}</summary>
      ${
        isOpen
          ? html`<bv-readings-sheet .cell=${cell} .host=${this.host} .table=${READINGS} .rows=${1} .version=${this.cell.version} .filter=${this.filterFor(unit)}
              .fetchRows=${this.fetchFrom(cell)}></bv-readings-sheet>
            ${this.host.state(cell)?.kind === 'corrections' ? html`<bv-corrections .cell=${cell} .host=${this.host} .unit=${unit}></bv-corrections>` : nothing}`
          : nothing
      }</details>`;
  }

  private figures(unit: string): TemplateResult | typeof nothing {
    const cell = (this.cell.parameters as { derive?: unknown }).derive;
    if (typeof cell !== 'string' || cell === '') return nothing;
    return html`<bv-derived-figures .host=${this.host} .cell=${cell} .unit=${unit} .version=${this.cell.version}></bv-derived-figures>`;
  }

  private readonly onToggle = (event: Event): void => {
    this.isOpen = (event.target as HTMLDetailsElement).open;
  };

  /** The same object each time, so that a sheet is not asked again for what it has. */
  private filterFor(unit: string): RowRange['filter'] {
    if (this.filter?.text !== unit) this.filter = { column: 'unit', text: unit };
    return this.filter;
  }

  private fetchFrom(cell: string): (range: RowRange) => Promise<RowPage> {
    if (this.fetching?.cell !== cell) this.fetching = { cell, fetch: (range) => this.host.rows(cell, range) };
    return this.fetching.fetch;
  }

  private finding(finding: RaisedFinding): TemplateResult {
    const { probability, byDate, falseDiscoveryRate, readingsUsed: used } = finding;
    const where = onFire(finding.fire, finding.fuel);
    const sure = [
      Number.isFinite(probability) ? chanceBy(percent(probability), writeDay(byDate)) : measuredFact(),
      Number.isFinite(used) ? readingsUsed(used) : '',
      Number.isFinite(falseDiscoveryRate) && falseDiscoveryRate >= 0.005
        ? expectWrong(percent(falseDiscoveryRate))
        : '',
    ].filter((part) => part !== '');
    return html`<div class="finding">
      <div>
        <p class="reason">${reasonHead(finding.reason)}${where === '' ? nothing : html` <span class="where">· ${where}</span>`}</p>
        <p class="evidence">${finding.evidence}</p>
        <p class="sure">${sure.join(' · ')}</p>
      </div>
      ${finding.checkFirst === '' ? nothing : html`<p class="first"><b>${checkFirst()}</b> ${finding.checkFirst}</p>`}
      ${WORKED_REASONS.has(finding.reason) ? html`<bv-finding-working .host=${this.host} .cell=${this.cell.name} .row=${finding.row} .version=${this.cell.version} .name=${`${reasonHead(finding.reason)} ${where}`.trim()}></bv-finding-working>` : nothing}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-raised-tag': RaisedTag;
  }
}
