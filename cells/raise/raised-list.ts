import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { unsafeSVG } from 'lit/directives/unsafe-svg.js';
import type { ShownTable } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import { drawLanes } from '../../shared/lanes/draw-lanes.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import { cautionCo, cautionLeave, cautionOldReadings } from '../../shared/messages/cautions.ts';
import {
  chanceBy,
  checkFirst,
  expectWrong,
  itsReadings,
  lanesHow,
  lanesUnderWay,
  measuredFact,
  moreRaised,
  nothingRaised,
  onFire,
  readingsUsed,
  reasonHead,
  tierHead,
  unitsAtLeast,
  unitsWord,
} from '../../shared/messages/page.ts';
import { percent } from '../../shared/messages/words.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import './derived-figures.ts';
import { raisedStyle } from './raised-style.ts';
import { byTier, type RaisedFinding, type RaisedUnit, raisedUnits } from './raised-units.ts';
import { tierMark } from './tier-mark.ts';
import { WORKED_REASONS } from './worked-reasons.ts';

/** Tags drawn at first; a large fleet's list goes on when asked. */
const FIRST_UNITS = 12;
const MORE_UNITS = 40;
/** Findings taken into tags; the sheet below has them all. */
const MOST_FINDINGS = 5000;

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

/** What the list asks of the page around it; it hands the whole of it on to the sheets in it. */
export interface RaisedHost {
  rows(cell: string, range: RowRange): Promise<RowPage>;
  lanes(cell: string, units: readonly string[]): Promise<readonly UnitLanes[]>;
  state(cell: string): CellState | undefined;
}

/** The raised units, one tag a unit: why, what to check first, how sure, and the fire lanes. */
@customElement('bv-raised')
export class RaisedList extends LitElement {
  static override styles = raisedStyle;

  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: RaisedHost;
  @state() private units: readonly RaisedUnit[] | undefined;
  @state() private lanes: ReadonlyMap<string, UnitLanes> = new Map();
  @state() private limit = FIRST_UNITS;
  @state() private failure = '';

  @state() private opened: ReadonlySet<string> = new Set();

  private askedVersion = -1;
  private readonly filters = new Map<string, NonNullable<RowRange['filter']>>();
  private fetching: { readonly cell: string; fetch(range: RowRange): Promise<RowPage> } | undefined;
  private readonly narrow = globalThis.matchMedia?.('(max-width: 700px)');
  private readonly onWidth = (): void => this.requestUpdate();

  private get isNarrow(): boolean {
    return this.narrow?.matches ?? false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.narrow?.addEventListener('change', this.onWidth);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.narrow?.removeEventListener('change', this.onWidth);
  }

  override willUpdate(changed: PropertyValues): void {
    if (this.cell.version !== this.askedVersion) {
      this.askedVersion = this.cell.version;
      void this.ask(this.cell.version);
    } else if (changed.has('limit') && this.units)
      void this.askLanes(
        this.cell.version,
        this.shownUnits.filter((unit) => !this.lanes.has(unit)),
      );
  }

  private async ask(version: number): Promise<void> {
    const to = Math.min(this.cell.rows['raised'] ?? 0, MOST_FINDINGS);
    try {
      // Most changes raise the same units again: their lanes are asked for in the same breath as the rows.
      const [page] = await Promise.all([
        this.host.rows(this.cell.name, { table: 'raised', from: 0, to }),
        this.askLanes(version, this.shownUnits),
      ]);
      if (version !== this.askedVersion) return;
      const before = new Set(this.shownUnits);
      this.units = raisedUnits(page, Math.min(page.total, to));
      this.failure = '';
      await this.askLanes(
        version,
        this.shownUnits.filter((unit) => !before.has(unit)),
      );
    } catch (cause) {
      // A cell that was calculated anew meanwhile refuses; its next version asks again.
      if (version === this.askedVersion) this.failure = cause instanceof Error ? cause.message : String(cause);
    }
  }

  private get shownUnits(): string[] {
    return (this.units ?? []).slice(0, this.limit).map(({ unit }) => unit);
  }

  private async askLanes(version: number, units: readonly string[]): Promise<void> {
    if (units.length === 0) return;
    const lanes = await this.host.lanes(this.cell.name, units);
    if (version !== this.askedVersion) return;
    this.lanes = new Map([...this.lanes, ...lanes.map((unit) => [unit.unit, unit] as const)]);
  }

  override render(): TemplateResult | typeof nothing {
    const { units, limit } = this;
    if (this.failure !== '') return html`<p class="none" role="alert">${this.failure}</p>`;
    if (!units) return nothing;
    if (units.length === 0) return html`<p class="none">${nothingRaised()}</p>`;
    const shown = units.slice(0, limit);
    return html`${byTier(shown).map(([tier, members]) => this.tier(tier, members, units))}
      ${units.length > limit ? html`<button type="button" @click=${this.more}>${moreRaised(Math.min(MORE_UNITS, units.length - limit), units.length)}</button>` : nothing}
      <p class="how">${lanesHow()}</p>`;
  }

  private readonly more = (): void => {
    this.limit += MORE_UNITS;
  };

  private tier(tier: string, members: readonly RaisedUnit[], all: readonly RaisedUnit[]): TemplateResult {
    const count = all.filter((unit) => unit.tier === tier).length;
    const isCut = (this.cell.rows['raised'] ?? 0) > MOST_FINDINGS;
    return html`<section class="tier" data-tier=${tier}>
      <header>${tierMark(tier)}<h3>${tierHead(tier)}</h3><span class="units">${isCut ? unitsAtLeast(count) : unitsWord(count)}</span></header>
      ${tier === 'safety' ? html`<div class="caution" role="note"><p>${cautionLeave()}</p><p>${cautionCo()} ${cautionOldReadings()}</p></div>` : nothing}
      ${members.map((unit) => this.tag(unit))}
    </section>`;
  }

  private tag({ unit, findings }: RaisedUnit): TemplateResult {
    const lanes = this.lanes.get(unit);
    return html`<article class="tag" aria-label=${unit}><span class="hole" aria-hidden="true"></span>
      <div class="words">
        <div class="head"><h4>${unit}</h4><p class="place">${lanes?.place ?? ''}</p></div>
        ${findings.map((finding) => this.finding(finding))}
      </div>
      <div class="lanes">${lanes ? unsafeSVG(drawLanes(lanes, this.isNarrow ? 'small' : 'large')) : lanesUnderWay()}</div>
      ${this.readings(unit)}
      ${this.figures(unit)}
    </article>`;
  }

  /** From a raised unit to the readings behind it: the sheet is drawn once it is opened. */
  private readings(unit: string): TemplateResult | typeof nothing {
    const cell = (this.cell.parameters as { readings?: unknown }).readings;
    if (typeof cell !== 'string' || cell === '') return nothing;
    const isOpen = this.opened.has(unit);
    return html`<details .open=${isOpen} @toggle=${(event: Event) => this.toggle(unit, (event.target as HTMLDetailsElement).open)}>
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

  private toggle(unit: string, isOpen: boolean): void {
    if (isOpen === this.opened.has(unit)) return;
    this.opened = new Set(isOpen ? [...this.opened, unit] : [...this.opened].filter((other) => other !== unit));
  }

  /** One object a unit, so that a sheet is not asked again for what it has. */
  private filterFor(unit: string): NonNullable<RowRange['filter']> {
    const filter = this.filters.get(unit) ?? { column: 'unit', text: unit };
    this.filters.set(unit, filter);
    return filter;
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
    'bv-raised': RaisedList;
  }
}
