import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellState } from '../../../shared/cell-state.ts';
import * as say from '../../../shared/messages/two-notebooks.ts';
import { readIsoDate, writeDay } from '../../../shared/quantities/dates.ts';
import type { PageSession } from '../page-session.ts';
import type { Comparison, MergeAnswers, MergeConflict } from '../protocol.ts';
import { conflictWords } from '../two/conflict-words.ts';
import { comparisonList } from './comparison-list.ts';
import { LightElement } from './light-element.ts';

interface OtherNotebook {
  readonly name: string;
  readonly text: string;
}

const YEAR_DAYS = 365;

/** Where another notebook is taken into the open one, question by question, or laid beside it; or two days of one. */
@customElement('bv-two-notebooks')
export class TwoNotebooks extends LightElement {
  @property({ attribute: false }) session!: PageSession;
  @property({ attribute: false }) cells: readonly CellState[] = [];
  @state() private other: OtherNotebook | undefined;
  @state() private conflicts: readonly MergeConflict[] = [];
  @state() private answers: MergeAnswers = {};
  @state() private comparison: Comparison | undefined;
  @state() private compared = '';
  private isOfDays = false;
  @state() private doing = '';
  @state() private said = '';
  @state() private fault = '';

  override render(): TemplateResult {
    const { other, doing } = this;
    const idle = doing === '' && this.conflicts.length === 0;
    return html`<section class="tray two" aria-labelledby="two-head">
      <h2 id="two-head">${say.panelHead()}</h2>
      <p>${say.panelText()}</p>
      <p class="acts"><label class="act file">${say.chooseOther()}<input type="file" accept=".json,application/json" @change=${this.onChoose} /></label>
        ${other ? html`<span class="file-name">${say.otherIs(other.name)}</span>` : nothing}</p>
      <p class="acts">
        <button type="button" class="act" ?disabled=${!other || !idle} @click=${() => this.run(say.merging(), () => this.merge({}))}>${say.mergeIt()}</button>
        <button type="button" class="act" ?disabled=${!other || !idle} @click=${() => this.run(say.comparing(), () => this.compare())}>${say.compareIt()}</button></p>
      <form class="days" @submit=${this.onDays}>
        <h3>${say.daysHead()}</h3>
        <p class="acts"><label>${say.fromDay()} <input name="from" type="text" inputmode="numeric" size="10" maxlength="10" autocomplete="off" .defaultValue=${this.yearBefore()} /></label>
          <label>${say.toDay()} <input name="to" type="text" inputmode="numeric" size="10" maxlength="10" autocomplete="off" .defaultValue=${this.session.asOf} /></label>
          <button type="submit" class="act" ?disabled=${!idle}>${say.compareDays()}</button></p>
      </form>
      ${this.fault === '' ? nothing : html`<p class="fault" role="alert">${this.fault}</p>`}
      <p class="outcome" role="status">${doing !== '' ? doing : this.said}</p>
      ${this.question()}
      ${this.comparison ? comparisonList(this.comparison, this.compared, this.isOfDays) : nothing}
      <p class="acts"><button type="button" class="act" @click=${() => this.dispatchEvent(new CustomEvent('bv-close-two', { bubbles: true }))}>${say.closePanel()}</button></p>
    </section>`;
  }

  /** One contradiction at a time, in the words of its cell. */
  private question(): TemplateResult | typeof nothing {
    const settled = Object.keys(this.answers).length;
    const open = this.conflicts.find(({ place }) => !Object.hasOwn(this.answers, place));
    if (!open) return nothing;
    const words = conflictWords(open, this.cells);
    const give = (answer: 'here' | 'there') => () => this.answer(open.place, answer);
    return html`<div class="question" role="group" aria-labelledby="two-asked">
      <p>${say.questionOf(settled + 1, this.conflicts.length)}</p>
      <p class="asked" id="two-asked">${words.about}</p>
      <dl class="sides"><dt>${say.hereHolds()}</dt><dd>${words.here}</dd><dt>${say.thereHolds(this.other?.name ?? '')}</dt><dd>${words.there}</dd></dl>
      <p class="answers"><button type="button" class="act" @click=${give('here')}>${say.keepThis(words.here)}</button>
        <button type="button" class="act" @click=${give('there')}>${say.takeThat(words.there)}</button>
        <button type="button" class="act" @click=${() => this.stop()}>${say.leaveMerging()}</button></p>
    </div>`;
  }

  private async answer(place: string, answer: 'here' | 'there'): Promise<void> {
    this.answers = { ...this.answers, [place]: answer };
    if (this.conflicts.every((conflict) => Object.hasOwn(this.answers, conflict.place)))
      await this.run(say.merging(), () => this.merge(this.answers));
  }

  private stop(): void {
    this.conflicts = [];
    this.answers = {};
    this.said = say.mergeLeft();
  }

  private async merge(answers: MergeAnswers): Promise<void> {
    const { other, session } = this;
    if (!other) return;
    const before = session.head.revision;
    const left = await session.merge(other.name, other.text, answers);
    if (left.length > 0) {
      this.conflicts = left;
      this.answers = {};
      return;
    }
    const settled = Object.keys(answers).length;
    this.conflicts = [];
    this.answers = {};
    await session.settled();
    this.said = session.head.revision === before ? say.nothingNew(other.name) : say.merged(other.name, settled);
  }

  private async compare(): Promise<void> {
    const { other } = this;
    if (!other) return;
    this.comparison = await this.session.compare(other.name, other.text);
    this.compared = say.comparedWith(say.thisNotebook(), other.name);
    this.isOfDays = false;
  }

  private onDays(event: SubmitEvent): void {
    event.preventDefault();
    const data = new FormData(event.currentTarget as HTMLFormElement);
    const [from, to] = ['from', 'to'].map((name) => String(data.get(name) ?? '').trim());
    const wrong = [from, to].find((day) => !isDay(day));
    if (wrong !== undefined) {
      this.fault = say.notADay(wrong);
      return;
    }
    void this.run(say.comparing(), async () => {
      this.comparison = await this.session.compareDays(from, to);
      this.compared = say.comparedDays(from, to);
      this.isOfDays = true;
    });
  }

  private async onChoose(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (!file) return;
    await this.run('', async () => {
      this.other = { name: file.name, text: await file.text() };
      this.stop();
      this.said = '';
    });
    input.value = '';
  }

  /** What cannot be done is said in one sentence, and leaves everything as it was. */
  private async run(doing: string, act: () => Promise<void>): Promise<void> {
    this.doing = doing;
    this.fault = '';
    this.said = '';
    this.comparison = undefined;
    try {
      await act();
    } catch (cause) {
      this.fault = cause instanceof Error ? cause.message : String(cause);
    } finally {
      this.doing = '';
    }
  }

  private yearBefore(): string {
    return writeDay(readIsoDate(this.session.asOf) - YEAR_DAYS);
  }
}

const isDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text) && Number.isFinite(readIsoDate(text));

declare global {
  interface HTMLElementTagNameMap {
    'bv-two-notebooks': TwoNotebooks;
  }
}
