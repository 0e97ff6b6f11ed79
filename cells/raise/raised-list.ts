import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { CellState } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import { cautionCo, cautionLeave, cautionOldReadings } from '../../shared/messages/cautions.ts';
import { lanesHow, moreRaised, nothingRaised, tierHead, unitsAtLeast, unitsWord } from '../../shared/messages/page.ts';
import { raisedStyle } from './raised-style.ts';
import './raised-tag.ts';
import type { RaisedHost } from './raised-tag.ts';
import { byTier, type RaisedUnit, raisedUnits } from './raised-units.ts';
import { tierMark } from './tier-mark.ts';

/** Tags drawn at first; a large fleet's list goes on when asked. */
const FIRST_UNITS = 12;
const MORE_UNITS = 40;
/** Findings taken into tags; the sheet below has them all. */
const MOST_FINDINGS = 5000;

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

  private askedVersion = -1;
  /** Versions of the cells that the lanes at hand were drawn from. */
  private history = '';
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
    } else if (changed.has('limit') && this.units) void this.askLanes(this.cell.version);
  }

  private async ask(version: number): Promise<void> {
    const to = Math.min(this.cell.rows['raised'] ?? 0, MOST_FINDINGS);
    try {
      // Most changes raise the same units again: their lanes are asked for in the same breath as the rows.
      const [page] = await Promise.all([
        this.host.rows(this.cell.name, { table: 'raised', from: 0, to }),
        this.askLanes(version),
      ]);
      if (version !== this.askedVersion) return;
      this.units = raisedUnits(page, Math.min(page.total, to));
      this.failure = '';
      await this.askLanes(version);
    } catch (cause) {
      // A cell that was calculated anew meanwhile refuses; its next version asks again.
      if (version === this.askedVersion) this.failure = cause instanceof Error ? cause.message : String(cause);
    }
  }

  /** The lanes of the shown units that are not at hand as their history now is. */
  private async askLanes(version: number): Promise<void> {
    // They are drawn from what the cell reads: while that stays, those at hand are still true.
    const history = this.cell.reads.map((name) => this.host.state(name)?.version ?? 0).join();
    const kept = history === this.history ? this.lanes : new Map<string, UnitLanes>();
    const units = (this.units ?? []).slice(0, this.limit).flatMap(({ unit }) => (kept.has(unit) ? [] : [unit]));
    if (units.length === 0) return;
    const lanes = await this.host.lanes(this.cell.name, units);
    if (version !== this.askedVersion) return;
    this.history = history;
    this.lanes = new Map([...kept, ...lanes.map((unit) => [unit.unit, unit] as const)]);
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
      ${repeat(
        members,
        ({ unit }) => unit,
        (unit) =>
          html`<bv-raised-tag .cell=${this.cell} .host=${this.host} .unit=${unit} .lanes=${this.lanes.get(unit.unit)} .narrow=${this.isNarrow}></bv-raised-tag>`,
      )}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-raised': RaisedList;
  }
}
