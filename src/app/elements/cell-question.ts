import { html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Question } from '../../../shared/outcome.ts';
import { BlankChange } from './blank-field.ts';
import { LightElement } from './light-element.ts';

/** A question that only the user can answer; the answer is a parameter of the asking cell. */
@customElement('bv-question')
export class CellQuestion extends LightElement {
  @property({ attribute: false }) question!: Question;
  @property() cell = '';

  override render(): TemplateResult {
    const { message, remedy, options, parameter } = this.question;
    return html`<div class="question" role="group" aria-label=${message}>
      <p class="asked">${message}</p>
      <p class="answers">${options.map(({ value, label }) => html`<button type="button" class="act" @click=${() => this.dispatchEvent(new BlankChange(parameter, value))}>${label}</button>`)}</p>
      <p class="remedy">${remedy}</p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-question': CellQuestion;
  }
}
