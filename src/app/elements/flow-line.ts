import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState } from '../../../shared/cell-state.ts';
import {
  duplicatesWord,
  flowFolded,
  flowLabel,
  flowSummary,
  goOn,
  rowsWord,
  setAsideWord,
  stopHere,
  threadTitle,
} from '../../../shared/messages/page.ts';
import type { StripViews } from '../cell-view.ts';
import { asWaiting, knotShape } from '../flow/knot-mark.ts';
import {
  type Flow,
  type FlowKnot,
  type FlowPipe,
  layOutFlow,
  mainRows,
  pipeWidth,
  rowsLeaving,
} from '../flow/lay-out-flow.ts';
import { phaseWords } from '../flow/phase-words.ts';
import { LightElement } from './light-element.ts';

/** A knot's row is as tall as the screen allows, between these. */
const TALLEST_ROW_PX = 82;
const LOWEST_ROW_PX = 60;
/** The line above the drawing and the edges of the screen. */
const OUTSIDE_PX = 92;
const LANE_PX = 12;
const EDGE_PX = 14;

/** The drawn flow at the side: map of the notebook, progress and list of errors at once, drawn as a gas train. */
@customElement('bv-flow')
export class FlowLine extends LightElement {
  @property({ attribute: false }) cells: readonly CellState[] = [];
  /** The views of the kinds that this program knows. */
  @property({ attribute: false }) views: StripViews = new Map();
  @property({ attribute: false }) busy = false;
  /** A calculation was stopped and left some cells as they were. */
  @property({ attribute: false }) stopped = false;
  /** The cell under the pointer or the focus: its pipes stand out. */
  @state() private looked = '';

  /** Where the page has no side, the flow is folded away above it. */
  private readonly narrow = globalThis.matchMedia?.('(max-width: 1180px)');
  private readonly onWidth = (): void => this.requestUpdate();

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('resize', this.onWidth);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('resize', this.onWidth);
  }

  override render(): TemplateResult {
    const roomPx = (globalThis.innerHeight - OUTSIDE_PX) / Math.max(1, this.cells.length);
    const rowPx = Math.round(Math.min(TALLEST_ROW_PX, Math.max(LOWEST_ROW_PX, roomPx)));
    const flow = layOutFlow(this.cells, rowPx);
    const knotX = EDGE_PX + flow.lanes * LANE_PX + 26;
    const known = this.cells.filter(({ kind }) => this.views.has(kind));
    const count = (phase: CellState['phase']): number => known.filter((cell) => cell.phase === phase).length;
    const [done, failed, asking, running] = [count('done'), count('failed'), count('asking'), count('running')];
    const all = this.cells.length;
    const summary = flowSummary(done, all, failed, asking, running, all - known.length);
    const drawing = html`<div class="drawing" style="height:${flow.height}px">
        <svg width="100%" height=${flow.height} aria-hidden="true">
          <g class="pipes ${this.looked === '' ? '' : 'looking'}">${flow.pipes.map((pipe) => this.pipe(pipe, flow, knotX))}</g>
          ${flow.knots.map((knot) => this.knot(knot, knotX))}
        </svg>
        <ol>${flow.knots.map((knot) => this.label(knot, knotX, rowPx))}</ol>
      </div>`;
    return html`<nav class="flow" aria-label=${flowLabel()}>${
      this.narrow?.matches
        ? html`<div class="above"><details><summary class="summary">${flowFolded(summary)}</summary>${drawing}</details>${this.valve()}</div>`
        : html`<div class="above"><p class="summary">${summary}</p>${this.valve()}</div>${drawing}`
    }</nav>`;
  }

  /** Its place is kept where there is nothing to stop, so that nothing moves. */
  private valve(): TemplateResult {
    const { busy, stopped } = this;
    const tell = (): void => {
      this.dispatchEvent(new CustomEvent(stopped ? 'bv-go-on' : 'bv-stop', { bubbles: true }));
    };
    return html`<button type="button" class="act small stop ${busy ? 'busy' : stopped ? 'stopped' : ''}" @click=${tell}>${stopped ? goOn() : stopHere()}</button>`;
  }

  private pipe(pipe: FlowPipe, flow: Flow, knotX: number): SVGTemplateResult {
    const x = knotX - 26 - pipe.lane * LANE_PX;
    const paths = pipe.branches.map(({ y }) => elbow(knotX, pipe.startY, x, y, LANE_PX / 2));
    const source = flow.knots.find(({ cell }) => cell.name === pipe.from)?.cell;
    const width = pipeWidth(pipe.rows);
    const dry =
      source === undefined ||
      source.description === undefined ||
      source.phase === 'failed' ||
      source.phase === 'asking';
    const looked =
      this.looked !== '' && (pipe.from === this.looked || pipe.branches.some(({ to }) => to === this.looked));
    const titles = pipe.branches.map(({ to }) => threadTitle(pipe.from, to, pipe.rows)).join('\n');
    return svg`<g class="pipe ${dry ? 'dry' : source?.stale ? 'old' : ''} ${looked ? 'looked' : ''}">
      <title>${titles}</title>
      ${paths.map((d) => svg`<path class="casing" d=${d} stroke-width=${width + 2.2} />`)}
      ${paths.map((d) => svg`<path class="gas" d=${d} stroke-width=${width} />`)}
    </g>`;
  }

  private knot({ cell, y, entries }: FlowKnot, knotX: number): SVGTemplateResult {
    const { setAside, duplicates } = rowsLeaving(cell);
    const leg =
      setAside + duplicates > 0
        ? svg`<path class="leg-casing" d="M${knotX + 8} ${y + 6}V${y + 22}H${knotX + 24}" /><path class="leg" d="M${knotX + 8} ${y + 6}V${y + 22}H${knotX + 24}" /><path class="cap" d="M${knotX + 25} ${y + 16}V${y + 28}" />`
        : nothing;
    const manifold =
      entries && entries[1] > entries[0]
        ? svg`<rect class="manifold" x=${knotX - 5} y=${entries[0] - 6} width="10" height=${entries[1] - entries[0] + 12} rx="4" />`
        : nothing;
    const shown = this.views.has(cell.kind) ? cell : asWaiting(cell);
    return svg`${manifold}${leg}<g class="knot phase-${shown.phase}" transform="translate(${knotX} ${y})">${knotShape(shown)}</g>`;
  }

  private label({ cell, y }: FlowKnot, knotX: number, rowPx: number): TemplateResult {
    const { setAside, duplicates } = rowsLeaving(cell);
    const rows = mainRows(cell);
    const words = phaseWords(cell, this.views.has(cell.kind));
    const leaving = [setAside > 0 ? setAsideWord(setAside) : '', duplicates > 0 ? duplicatesWord(duplicates) : '']
      .filter((part) => part !== '')
      .join(', ');
    const look = (name: string) => () => {
      this.looked = name;
    };
    return html`<li style="top:${y - rowPx / 2}px;height:${rowPx}px;padding-left:${knotX + 22}px">
      <a href="#cell-${cell.name}" @mouseenter=${look(cell.name)} @mouseleave=${look('')} @focus=${look(cell.name)} @blur=${look('')}>
        <span class="cell">${cell.name}</span>
        <span class="rows">${words !== '' ? words : rows > 0 ? rowsWord(rows) : ''}</span>
        ${leaving === '' ? nothing : html`<span class="leaving">${leaving}</span>`}
      </a></li>`;
  }
}

/** From a knot to its lane, down the lane, and into the reader: elbows as a pipe fitter makes them. */
function elbow(knotX: number, fromY: number, laneX: number, toY: number, r: number): string {
  const bend = Math.min(r, Math.abs(toY - fromY) / 2);
  return `M${knotX} ${fromY}H${laneX + bend}Q${laneX} ${fromY} ${laneX} ${fromY + bend}V${toY - bend}Q${laneX} ${toY} ${laneX + bend} ${toY}H${knotX}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-flow': FlowLine;
  }
}
