import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Blank, Remark, Segment } from '../../../shared/cell.ts';
import type { CellState } from '../../../shared/cell-state.ts';
import { cautionCo, cautionOldReadings } from '../../../shared/messages/cautions.ts';
import {
  detailsHead,
  errorOf,
  notesWord,
  phaseStale,
  severityWord,
  staleKept,
  whyHead,
} from '../../../shared/messages/page.ts';
import type { StripHost, StripView, StripViews } from '../cell-view.ts';
import { asWaiting, knotMark } from '../flow/knot-mark.ts';
import { phaseWords } from '../flow/phase-words.ts';
import './blank-field.ts';
import type { BlankChange, FilesAdded } from './blank-field.ts';
import './cell-question.ts';
import { LightElement } from './light-element.ts';

/** One cell, as wide as the page: its answer, the sentence whose blanks are its parameters, then sheet or picture. */
@customElement('bv-strip')
export class CellStrip extends LightElement {
  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: StripHost;
  @property({ attribute: false }) views!: StripViews;
  /** Names and kinds of the notebook's cells, for blanks that name one. */
  @property({ attribute: false }) names: ReadonlyMap<string, string> = new Map();
  @property({ type: Boolean }) front = false;
  @state() private view: StripView | undefined;
  @state() private near = false;

  /** The cell as its sheet or picture was last drawn. */
  private drawn: CellState | undefined;
  private viewedKind = '';
  private sight: IntersectionObserver | undefined;
  private readonly beforePrint = (): void => this.show();

  override connectedCallback(): void {
    super.connectedCallback();
    this.sight = new IntersectionObserver(
      (entries) => {
        this.near = entries.at(-1)?.isIntersecting ?? false;
      },
      { rootMargin: '600px' },
    );
    this.sight.observe(this);
    window.addEventListener('beforeprint', this.beforePrint);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sight?.disconnect();
    window.removeEventListener('beforeprint', this.beforePrint);
  }

  private show(): void {
    this.near = true;
  }

  protected override willUpdate(): void {
    const { kind } = this.cell;
    // Sheets and pictures far from the screen wait until they come near it; answers and sentences never wait.
    if (this.near) this.drawn = this.cell;
    if (!this.near || this.viewedKind === kind) return;
    this.viewedKind = kind;
    this.view = undefined;
    void this.views
      .get(kind)?.()
      .then((view) => {
        if (this.viewedKind === kind) this.view = view;
      });
  }

  protected override shouldUpdate(changed: PropertyValues): boolean {
    // A new list of the same names is no news.
    return changed.size > 1 || !changed.has('names') || !this.hasUpdated;
  }

  override render(): TemplateResult {
    const { cell } = this;
    const isKnown = this.views.has(cell.kind);
    const words = phaseWords(cell, isKnown);
    const remarks = this.remarks(cell.description?.remarks ?? []);
    const heading = `strip-${cell.name}`;
    return html`<section class="strip ${this.front ? 'front' : ''} phase-${cell.phase} ${isKnown ? '' : 'unknown'} ${cell.stale ? 'stale' : ''}" id="cell-${cell.name}" aria-labelledby=${heading} tabindex="-1"
      @bv-blank=${(event: BlankChange) => this.host.setParameter(cell.name, event.detail.parameter, event.detail.value)}
      @bv-add-files=${(event: FilesAdded) => this.host.addFiles(cell.name, event.detail.parameter, event.detail.files)}>
      <div class="name">
        ${knotMark(isKnown ? cell : asWaiting(cell))}
        <h2 id=${heading}>${cell.name}</h2>
        ${cell.title.toLowerCase() === cell.name.toLowerCase() ? nothing : html`<p class="kind">${cell.title}</p>`}
        ${words === '' ? nothing : html`<p class="phase">${words}</p>`}
        ${cell.stale && cell.phase !== 'running' ? html`<p class="phase">${phaseStale()}</p>` : nothing}
        ${cell.why === '' ? nothing : html`<details class="why"><summary>${whyHead()}</summary><p>${cell.why}</p></details>`}
      </div>
      <div class="content">
        ${this.trouble()}
        ${cell.description && cell.kind !== 'note' ? html`<p class="answer">${cell.description.answer}</p>` : nothing}
        <p class="sentence">${this.sentence(cell.sentence)}</p>
        ${cell.details.length === 0 ? nothing : html`<details class="details"><summary>${detailsHead()}</summary><p class="sentence">${this.sentence(cell.details)}</p></details>`}
        ${this.front ? nothing : remarks}
        <div class="body">${this.view && this.drawn?.description ? this.view.render(this.drawn, this.host) : nothing}</div>
        ${this.front ? remarks : nothing}
      </div>
    </section>`;
  }

  private trouble(): TemplateResult | typeof nothing {
    const { cell } = this;
    if (cell.phase === 'failed')
      return html`<div class="trouble" role="alert"><p>${errorOf(cell.name, cell.message)}</p>${cell.description ? html`<p>${staleKept()}</p>` : nothing}</div>`;
    if (cell.phase === 'asking' && cell.question)
      return html`<bv-question .question=${cell.question} .parameters=${cell.parameters}></bv-question>`;
    return nothing;
  }

  /** A mark that follows a blank stays on its line. */
  private sentence(segments: readonly Segment[]): (TemplateResult | string)[] {
    return segments.map((segment, i) => {
      if (typeof segment !== 'string') {
        const next = segments[i + 1];
        const mark = typeof next === 'string' ? (/^[,.;:)%]/.exec(next)?.[0] ?? '') : '';
        return html`<span class="held">${this.blank(segment)}${mark}</span>`;
      }
      return i > 0 && typeof segments[i - 1] !== 'string' ? segment.replace(/^[,.;:)%]/, '') : segment;
    });
  }

  private blank(blank: Blank): TemplateResult {
    return html`<bv-blank .blank=${blank} .value=${this.heldBy(blank)} .cells=${this.cellsFor(blank)}></bv-blank>`;
  }

  private heldBy({ parameter }: Blank): unknown {
    return parameter
      .split('.')
      .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], this.cell.parameters);
  }

  private cellsFor({ entry }: Blank): string[] {
    if (entry.kind !== 'cell') return [];
    return [...this.names]
      .filter(([name, kind]) => name !== this.cell.name && entry.kinds.includes(kind))
      .map(([name]) => name);
  }

  /** Warnings stand in the open; notes are many and are folded. */
  private remarks(all: readonly Remark[]): TemplateResult | typeof nothing {
    // The raised units have these two beside their safety tier already.
    const said = this.front ? [cautionCo(), cautionOldReadings()] : [];
    const remarks = all.filter(({ text }) => !said.includes(text));
    const list = (some: readonly Remark[]): TemplateResult =>
      html`<ul class="remarks">${some.map(({ severity, text }) => html`<li class=${severity}><span class="severity">${severityWord(severity)}</span> ${text}</li>`)}</ul>`;
    const notes = remarks.filter(({ severity }) => severity === 'note');
    const loud = remarks.filter(({ severity }) => severity !== 'note');
    if (remarks.length === 0) return nothing;
    return html`${loud.length > 0 ? list(loud) : nothing}
      ${notes.length > 0 ? html`<details class="notes"><summary>${notesWord(notes.length)}</summary>${list(notes)}</details>` : nothing}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-strip': CellStrip;
  }
}
