import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import * as say from '../../shared/messages/working.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import type { NumberPlace, WorkingInput } from '../../shared/working/working.ts';
import { actStyle } from './act-style.ts';
import { budgetBars, footPart, inputList, readingPart, stepList } from './working-chain.ts';
import { workingChainStyle } from './working-chain-style.ts';
import { workingStyle } from './working-style.ts';

/** Asks the page for a working; the page's host is one. */
export interface WorkingAsker {
  working(place: NumberPlace): Promise<ShownWorking>;
}

/**
 * How one number came about, in place: the reading in its file, the chain of relations with symbols and with numbers, what
 * its uncertainty is made of, and who says so. `bv-put-away` asks whoever opened it to close it.
 */
@customElement('bv-working')
export class WorkingView extends LitElement {
  static override styles = [actStyle, workingStyle, workingChainStyle];

  @property({ attribute: false }) host!: WorkingAsker;
  @property({ attribute: false }) place!: NumberPlace;
  /** A new version of the cell asks again. */
  @property({ type: Number }) version = 0;
  /** Stands inside the working of another number. */
  @property({ type: Boolean, reflect: true }) inner = false;
  @state() private working: ShownWorking | undefined;
  @state() private failure = '';
  @state() private opened: ReadonlySet<string> = new Set();

  private asked = 0;

  override willUpdate(changed: PropertyValues): void {
    const moved = changed.has('place') && !samePlace(changed.get('place'), this.place);
    if (!moved && !changed.has('version')) return;
    if (moved) this.working = undefined;
    void this.ask(++this.asked);
  }

  private async ask(asked: number): Promise<void> {
    try {
      const working = await this.host.working(this.place);
      if (asked !== this.asked) return;
      this.working = working;
      this.failure = '';
      // A chain that goes on in one other cell is shown whole; of several the reader chooses.
      const onward = working.inputs.filter(({ from }) => from);
      this.opened = new Set(onward.length === 1 ? [onward[0].name] : []);
    } catch (cause) {
      if (asked !== this.asked) return;
      this.working = undefined;
      this.failure = cause instanceof Error ? cause.message : String(cause);
    }
  }

  /** Puts the focus on the head, so that a screen reader begins there. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('section')?.focus({ preventScroll: true });
    this.scrollIntoView({ block: 'nearest' });
  }

  override render(): TemplateResult {
    const { working, failure } = this;
    const name = working ? say.workingOf(working.title) : say.workingName();
    return html`<section aria-label=${name} tabindex="-1" @keydown=${this.onKey}>
      ${working ? this.head(working) : html`<div class="head"><p role=${failure === '' ? 'status' : 'alert'}>${failure === '' ? say.workingUnderWay() : failure}</p>${this.away()}</div>`}
      ${working ? this.body(working) : nothing}
    </section>`;
  }

  private head({ title, steps }: ShownWorking): TemplateResult {
    const last = steps[steps.length - 1];
    return html`<div class="head">
      <h4>${title}</h4>
      <p class="number"><b>${last.stated}</b> <span>${say.sdWords(last.sd, last.unit)}</span></p>
      ${this.away()}
    </div>`;
  }

  private away(): TemplateResult | typeof nothing {
    return this.inner
      ? nothing
      : html`<button type="button" class="away" @click=${this.putAway}>${say.putAway()}</button>`;
  }

  private body(working: ShownWorking): TemplateResult {
    const { readings, inputs, steps } = working;
    const onward = inputs.filter(({ from }) => from);
    const plain = inputs.filter(({ from }) => !from);
    const last = steps[steps.length - 1];
    const uncertainty = html`<div><h5>${say.budgetHead()}</h5><p>${say.workingSd(last.sd, last.unit)}</p>${budgetBars(working)}</div>`;
    const file = html`<div><h5>${say.readingsHead(readings.length)}</h5>${readings.map(readingPart)}</div>`;
    return html`
      ${onward.length === 0 ? html`<div class="pair">${readings.length > 0 ? file : nothing}${uncertainty}</div>` : nothing}
      ${plain.length > 0 ? html`<h5>${say.inputsHead()}</h5>${inputList(plain, () => nothing)}` : nothing}
      <h5>${say.stepsHead(steps.length)}</h5>
      ${stepList(steps)}
      ${onward.length > 0 ? html`<h5>${say.onwardHead(onward.length)}</h5><div class="onward">${inputList(onward, (input) => this.onward(input))}</div>${uncertainty}` : nothing}
      ${footPart(working)}`;
  }

  /** Leads on to the working of the number that another cell gave. */
  private onward({ name, title, from }: WorkingInput): TemplateResult | typeof nothing {
    if (!from) return nothing;
    const isOpen = this.opened.has(name);
    return html`<button type="button" aria-expanded=${isOpen} aria-label=${isOpen ? say.putAwayOf(title) : say.showWorkingOf(title)} @click=${() => this.toggle(name)}>${isOpen ? say.putAway() : say.showWorking()}</button>
      ${isOpen ? html`<bv-working inner .host=${this.host} .place=${from} .version=${this.version}></bv-working>` : nothing}`;
  }

  private toggle(name: string): void {
    this.opened = new Set(
      this.opened.has(name) ? [...this.opened].filter((one) => one !== name) : [...this.opened, name],
    );
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || this.inner) return;
    event.stopPropagation();
    this.putAway();
  };

  private readonly putAway = (): void => {
    this.dispatchEvent(new CustomEvent('bv-put-away', { bubbles: true, composed: true }));
  };
}

const samePlace = (a: NumberPlace | undefined, b: NumberPlace): boolean =>
  a !== undefined && a.cell === b.cell && a.column === b.column && a.row === b.row;

declare global {
  interface HTMLElementTagNameMap {
    'bv-working': WorkingView;
  }
}
