import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Blank, Remark, Segment } from '../../../shared/cell.ts';
import type { CellState } from '../../../shared/cell-state.ts';
import { errorOf, phaseStale, staleKept, whyHead } from '../../../shared/messages/page.ts';
import type { StripHost, StripView, StripViews } from '../cell-view.ts';
import { knotMark } from '../flow/knot-mark.ts';
import { phaseWords } from '../flow/phase-words.ts';
import './blank-field.ts';
import type { BlankChange } from './blank-field.ts';
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

  private sight: IntersectionObserver | undefined;
  private readonly beforePrint = (): void => this.show();

  override connectedCallback(): void {
    super.connectedCallback();
    this.sight = new IntersectionObserver(
      (entries) => entries.some(({ isIntersecting }) => isIntersecting) && this.show(),
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
    if (this.near) return;
    this.near = true;
    void this.views
      .get(this.cell.kind)?.()
      .then((view) => {
        this.view = view;
      });
  }

  protected override shouldUpdate(changed: PropertyValues): boolean {
    // A new list of the same names is no news.
    return changed.size > 1 || !changed.has('names') || !this.hasUpdated;
  }

  override render(): TemplateResult {
    const { cell } = this;
    const words = phaseWords(cell);
    const heading = `strip-${cell.name}`;
    return html`<section class="strip ${this.front ? 'front' : ''} phase-${cell.phase} ${cell.stale ? 'stale' : ''}" id="cell-${cell.name}" aria-labelledby=${heading} tabindex="-1"
      @bv-blank=${(event: BlankChange) => this.host.setParameter(cell.name, event.detail.parameter, event.detail.value)}
      @bv-open-files=${(event: CustomEvent<string>) => this.host.openFiles(cell.name, event.detail)}>
      <div class="name">
        ${knotMark(cell)}
        <h2 id=${heading}>${cell.name}</h2>
        ${cell.title.toLowerCase() === cell.name.toLowerCase() ? nothing : html`<p class="kind">${cell.title}</p>`}
        ${words === '' ? nothing : html`<p class="phase">${words}</p>`}
        ${cell.stale && cell.phase !== 'running' ? html`<p class="phase">${phaseStale()}</p>` : nothing}
        ${cell.why === '' ? nothing : html`<details class="why"><summary>${whyHead()}</summary><p>${cell.why}</p></details>`}
      </div>
      <div class="content">
        ${this.trouble()}
        ${cell.description && cell.kind !== 'note' ? html`<p class="answer">${cell.description.answer}</p>` : nothing}
        <p class="sentence">${cell.sentence.map((segment) => this.segment(segment))}</p>
        ${this.remarks(cell.description?.remarks ?? [])}
        <div class="body">${this.near && this.view && cell.description ? this.view.render(cell, this.host) : nothing}</div>
      </div>
    </section>`;
  }

  private trouble(): TemplateResult | typeof nothing {
    const { cell } = this;
    if (cell.phase === 'failed')
      return html`<div class="trouble" role="alert"><p>${errorOf(cell.name, cell.message)}</p>${cell.description ? html`<p>${staleKept()}</p>` : nothing}</div>`;
    if (cell.phase === 'asking' && cell.question)
      return html`<bv-question .question=${cell.question} .cell=${cell.name}></bv-question>`;
    return nothing;
  }

  private segment(segment: Segment): TemplateResult | string {
    if (typeof segment === 'string') return segment;
    return html`<bv-blank .blank=${segment} .value=${this.heldBy(segment)} .cells=${this.cellsFor(segment)}></bv-blank>`;
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

  private remarks(remarks: readonly Remark[]): TemplateResult | typeof nothing {
    if (remarks.length === 0) return nothing;
    return html`<ul class="remarks">${remarks.map(({ severity, text }) => html`<li class=${severity}><span class="severity">${severity}</span> ${text}</li>`)}</ul>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-strip': CellStrip;
  }
}
