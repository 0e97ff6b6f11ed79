import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { unsafeSVG } from 'lit/directives/unsafe-svg.js';
import type { CellState } from '../../shared/cell-state.ts';
import { drawLanes } from '../../shared/lanes/draw-lanes.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import { lanesFind, lanesHow, lanesNext, lanesNone, lanesPrevious, lanesShown } from '../../shared/messages/page.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import { actStyle } from './act-style.ts';
import { TurnElement } from './turn-element.ts';
import { unitLanesStyle } from './unit-lanes-style.ts';
import { unitNames } from './unit-names.ts';

const UNITS_A_PAGE = 12;

/** The fire lanes of every unit in a table, small and many; the one that is opened stands large above them. */
@customElement('bv-unit-lanes')
export class UnitLanesList extends TurnElement {
  static override styles = [actStyle, unitLanesStyle];

  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: ViewHost;
  /** The result table whose column `unit` names the units. */
  @property() table = '';
  @state() private names: readonly string[] = [];
  @state() private drawn: ReadonlyMap<string, UnitLanes> = new Map();
  @state() private first = 0;
  @state() private wanted = '';
  @state() private opened = '';
  @state() private failure = '';

  private askedVersion = -1;

  override willUpdate(changed: PropertyValues): void {
    if (this.cell.version !== this.askedVersion) {
      this.askedVersion = this.cell.version;
      void this.askNames(this.cell.version);
    } else if (changed.has('first') || changed.has('wanted')) void this.askLanes(this.cell.version);
  }

  private get found(): readonly string[] {
    const wanted = this.wanted.trim().toLowerCase();
    return wanted === '' ? this.names : this.names.filter((name) => name.toLowerCase().includes(wanted));
  }

  private get shown(): readonly string[] {
    return this.found.slice(this.first, this.first + UNITS_A_PAGE);
  }

  private async askNames(version: number): Promise<void> {
    try {
      const names = await unitNames(this.table, (range) => this.host.rows(this.cell.name, range));
      if (version !== this.askedVersion) return;
      this.names = names;
    } catch (cause) {
      // A cell that was calculated anew meanwhile refuses; its next version asks again.
      if (version === this.askedVersion) this.failure = cause instanceof Error ? cause.message : String(cause);
      return;
    }
    this.failure = '';
    await this.askLanes(version);
  }

  private async askLanes(version: number): Promise<void> {
    const lanes = await this.host.lanes(this.cell.name, this.shown);
    if (version === this.askedVersion) this.drawn = new Map(lanes.map((unit) => [unit.unit, unit]));
  }

  override render(): TemplateResult | typeof nothing {
    const { found, shown } = this;
    if (this.names.length === 0) return this.failure === '' ? nothing : html`<p class="how">${this.failure}</p>`;
    const opened = this.drawn.get(this.opened);
    return html`<div class="find">
        <label>${lanesFind()} <input type="search" .value=${this.wanted} @input=${this.onFind} /></label>
        <span role="status">${found.length === 0 ? lanesNone(this.wanted) : lanesShown(this.first + 1, this.first + shown.length, found.length)}</span>
        ${
          found.length > UNITS_A_PAGE
            ? html`<button type="button" ?disabled=${this.first === 0} @click=${() => this.turn(-1)}>${lanesPrevious()}</button>
              <button type="button" ?disabled=${this.first + UNITS_A_PAGE >= found.length} @click=${() => this.turn(1)}>${lanesNext()}</button>`
            : nothing
        }
      </div>
      ${opened ? html`<div class="large"><h4>${opened.unit} <span>${opened.place}</span></h4>${unsafeSVG(drawLanes(opened, 'large'))}</div>` : nothing}
      <ul>${shown.map((name) => this.small(name))}</ul>
      <p class="how">${lanesHow()}</p>`;
  }

  private small(name: string): TemplateResult {
    const lanes = this.drawn.get(name);
    return html`<li><button type="button" class="unit" aria-expanded=${this.opened === name} @click=${() => {
      this.opened = this.opened === name ? '' : name;
    }}><b>${name}</b> ${lanes ? unsafeSVG(drawLanes(lanes, 'small')) : nothing}</button></li>`;
  }

  private turn(pages: number): void {
    this.first = Math.max(0, this.first + pages * UNITS_A_PAGE);
  }

  private onFind(event: Event): void {
    this.first = 0;
    this.wanted = (event.target as HTMLInputElement).value;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-unit-lanes': UnitLanesList;
  }
}
