import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Acceptable } from '../../shared/corrections/acceptable.ts';
import * as say from '../../shared/messages/proposals.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import { actStyle } from './act-style.ts';

/** Lines shown at first. */
const FIRST = 5;

/** A list of proposals, each with its evidence and a button, and one button for all of them. Nothing is done unasked. */
@customElement('bv-accepts')
export class AcceptList extends LitElement {
  static override styles = [
    actStyle,
    css`
    :host { display: block; margin: 0 0 22px; }
    header { display: flex; flex-wrap: wrap; gap: 6px 20px; align-items: center; margin: 0 0 6px; }
    h3 { margin: 0; font-size: 1rem; }
    ul { list-style: none; margin: 0 0 8px; padding: 0; border-top: 1px solid var(--rule); }
    li { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 4px 24px; align-items: center; padding: 6px 0; border-bottom: 1px solid var(--rule); }
    p { margin: 0; overflow-wrap: anywhere; }
    .words { font-weight: 650; }
    .evidence { color: var(--ink-2); font-size: 0.92rem; }
    button:disabled { cursor: progress; }
    @media (max-width: 640px) { li { grid-template-columns: minmax(0, 1fr); } }
  `,
  ];

  @property({ attribute: false }) head = '';
  @property({ attribute: false }) entries: readonly Acceptable[] = [];
  /** Takes all of them, also those that come later. */
  @property({ attribute: false }) allKey = '';
  @property({ attribute: false }) cell = '';
  /** What the cell's parameter holds now. */
  @property({ attribute: false }) accepted: readonly string[] = [];
  @property({ attribute: false }) host!: Pick<ViewHost, 'setParameter'>;
  @state() private all = false;
  @state() private busy = false;

  override render(): TemplateResult | typeof nothing {
    const { entries } = this;
    if (entries.length === 0) return nothing;
    const shown = this.all ? entries : entries.slice(0, FIRST);
    return html`<header><h3>${this.head}</h3>
        ${entries.length > 1 ? html`<button type="button" ?disabled=${this.busy} @click=${() => this.accept(this.allKey)}>${say.acceptAll(entries.length)}</button>` : nothing}</header>
      <ul>${shown.map(
        ({
          key,
          words,
          evidence,
        }) => html`<li><div><p class="words">${words}</p><p class="evidence">${evidence}</p></div>
        <button type="button" ?disabled=${this.busy} aria-label=${`${say.accept()}: ${words}`} @click=${() => this.accept(key)}>${say.accept()}</button></li>`,
      )}</ul>
      ${
        shown.length < entries.length
          ? html`<button type="button" @click=${() => {
              this.all = true;
            }}>${say.showAll(entries.length)}</button>`
          : nothing
      }`;
  }

  private async accept(key: string): Promise<void> {
    this.busy = true;
    try {
      await this.host.setParameter(this.cell, 'accept', [...new Set([...this.accepted, key])]);
    } finally {
      this.busy = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-accepts': AcceptList;
  }
}
