import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { answerValue, answerWith } from '../../../shared/answer-value.ts';
import { answerNeeded, answerThis } from '../../../shared/messages/page.ts';
import type { AnswerEntry, NamedAnswer, Question } from '../../../shared/outcome.ts';
import { BlankChange } from './blank-field.ts';
import { LightElement } from './light-element.ts';

/** A question that only the user can answer; the answer is a parameter of the asking cell. */
@customElement('bv-question')
export class CellQuestion extends LightElement {
  @property({ attribute: false }) question!: Question;
  /** The asking cell's parameters. */
  @property({ attribute: false }) parameters: unknown;

  override render(): TemplateResult {
    const { message, remedy, options, entry } = this.question;
    return html`<div class="question" role="group" aria-label=${message}>
      <p class="asked">${message}</p>
      ${
        options.length > 0
          ? html`<p class="answers">${options.map(({ value, label, answer }) => html`<button type="button" class="act" @click=${() => this.give(value, answer)}>${label}</button>`)}</p>`
          : nothing
      }
      ${entry ? this.entry(entry) : nothing}
      ${options.length === 0 && !entry ? html`<p class="remedy">${remedy}</p>` : nothing}
    </div>`;
  }

  private entry(entry: AnswerEntry): TemplateResult {
    return html`<form class="answers" @submit=${(event: SubmitEvent) => this.submit(event, entry)}>
      <label>${entry.label} <input class="word" name="word" type="text" required autocomplete="off" title=${answerNeeded()} /></label>
      <button type="submit" class="act">${answerThis()}</button>
    </form>`;
  }

  private submit(event: SubmitEvent, entry: AnswerEntry): void {
    event.preventDefault();
    const word = String(new FormData(event.currentTarget as HTMLFormElement).get('word') ?? '').trim();
    if (word !== '') this.give(word, answerWith(entry, word));
  }

  private give(word: string, answer: NamedAnswer | undefined): void {
    const { parameter } = this.question;
    const held = (this.parameters as Record<string, unknown> | undefined)?.[parameter];
    this.dispatchEvent(new BlankChange(parameter, answerValue(held, word, answer)));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-question': CellQuestion;
  }
}
