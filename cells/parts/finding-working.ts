import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { showWorking, showWorkingOf } from '../../shared/messages/working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import { actStyle } from './act-style.ts';

/** Opens how the figure in one finding's sentence came about, below the sentence. */
@customElement('bv-finding-working')
export class FindingWorking extends LitElement {
  static override styles = [
    actStyle,
    css`
    button {
      margin-top: 8px;
    }
    bv-working {
      margin-top: 12px;
    }
    @media print {
      button {
        display: none;
      }
    }
  `,
  ];

  @property({ attribute: false }) host!: unknown;
  /** The cell that raises. */
  @property() cell = '';
  @property({ type: Number }) row = 0;
  @property({ type: Number }) version = 0;
  /** What the finding is called, for those who hear a list of buttons. */
  @property() name = '';
  @state() private isOpen = false;

  private place: NumberPlace | undefined;

  override willUpdate(): void {
    const { cell, row } = this;
    if (this.place?.cell !== cell || this.place.row !== row) this.place = { cell, column: 'evidence', row };
  }

  override render(): TemplateResult {
    const { isOpen } = this;
    return html`${isOpen ? nothing : html`<button type="button" aria-expanded="false" aria-label=${showWorkingOf(this.name)} @click=${this.open}>${showWorking()}</button>`}
      ${isOpen ? html`<bv-working .host=${this.host} .place=${this.place} .version=${this.version} @bv-put-away=${this.close}></bv-working>` : nothing}`;
  }

  private readonly open = async (): Promise<void> => {
    this.isOpen = true;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement & { focus(): void }>('bv-working')?.focus();
  };

  private readonly close = async (event: Event): Promise<void> => {
    event.stopPropagation();
    this.isOpen = false;
    await this.updateComplete;
    this.renderRoot.querySelector('button')?.focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-finding-working': FindingWorking;
  }
}
