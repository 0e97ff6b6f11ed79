import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Proposal } from '../../shared/corrections/proposal.ts';
import * as say from '../../shared/messages/proposals.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import { actStyle } from './act-style.ts';

/** Proposals shown at first. */
const FIRST = 6;

/** A list of proposed corrections, each with its evidence; whoever accepts one signs with initials. Nothing is done unasked. */
@customElement('bv-proposals')
export class ProposalList extends LitElement {
  static override styles = [
    actStyle,
    css`
    :host { display: block; margin: 0 0 22px; }
    h3 { margin: 0 0 4px; font-size: 1rem; }
    p { margin: 0 0 8px; max-width: 46rem; }
    ul { list-style: none; margin: 0; padding: 0; border-top: 1px solid var(--rule); }
    li { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 6px 24px; align-items: center; padding: 8px 0; border-bottom: 1px solid var(--rule); }
    li p { margin: 0; }
    .words { font-weight: 650; }
    input { font: inherit; color: inherit; background: var(--sheet); border: 2px solid var(--ink); min-height: 28px; padding: 4px 8px; width: 5em; }
    input:focus-visible { outline: 3px solid var(--act); outline-offset: 2px; }
    @media (max-width: 640px) { li { grid-template-columns: minmax(0, 1fr); } }
  `,
  ];

  @property({ attribute: false }) head = '';
  @property({ attribute: false }) proposals: readonly Proposal[] = [];
  @property({ attribute: false }) host!: ViewHost;
  /** The cell whose readings are corrected. */
  @property({ attribute: false }) target = '';
  @state() private initials = '';
  @state() private all = false;
  @state() private busy = false;
  @state() private fault = '';

  override render(): TemplateResult | typeof nothing {
    const { proposals } = this;
    if (proposals.length === 0) return nothing;
    const shown = this.all ? proposals : proposals.slice(0, FIRST);
    return html`<h3>${this.head}</h3>
      <p><label>${say.initials()} <input type="text" maxlength="8" autocomplete="off" .value=${this.initials} @input=${(
        event: InputEvent,
      ) => {
        this.initials = (event.target as HTMLInputElement).value.trim();
      }} /></label> ${this.initials === '' ? say.initialsNeeded() : ''}</p>
      ${this.fault === '' ? nothing : html`<p role="alert">${this.fault}</p>`}
      <ul>${shown.map((proposal) => this.line(proposal))}</ul>
      ${
        shown.length < proposals.length
          ? html`<p><button type="button" @click=${() => {
              this.all = true;
            }}>${say.showAll(proposals.length)}</button></p>`
          : nothing
      }`;
  }

  private line(proposal: Proposal): TemplateResult {
    const { evidence, words } = proposal;
    return html`<li><div><p>${evidence}</p><p class="words">${say.proposed(words)}</p></div>
      <button type="button" ?disabled=${this.busy || this.initials === ''} @click=${() => this.accept(proposal)}>${say.accept()}</button></li>`;
  }

  private async accept({ evidence, corrections }: Proposal): Promise<void> {
    this.busy = true;
    this.fault = '';
    try {
      for (const correction of corrections) {
        this.fault = await this.host.correct(this.target, { ...correction, reason: evidence, initials: this.initials });
        if (this.fault !== '') return;
      }
    } finally {
      this.busy = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-proposals': ProposalList;
  }
}
