import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import * as say from '../../shared/messages/columns.ts';
import * as tell from '../../shared/messages/unknown-words.ts';
import type { Field } from '../../shared/readings/fields.ts';
import type { Profile, ProfileColumn } from '../../shared/readings/profile.ts';
import type { Vocabulary } from '../../shared/readings/vocabulary.ts';
import { actStyle } from './act-style.ts';
import { type FileColumn, type FileShape, SURE, unitChoices } from './file-shapes.ts';
import { shapeFormStyle } from './shape-form-style.ts';
import { plainWords } from './shown-value.ts';

const FIRES = ['high', 'low', 'mid', 'single'];
const STATES = ['as_found', 'as_left', 'trial'];

/** The columns of a shape as the user wants them read, and the name to remember it by. */
export class ShapeSettled extends Event {
  readonly name: string;
  readonly columns: Readonly<Record<string, ProfileColumn>>;
  readonly words: Profile['words'];
  constructor(name: string, columns: Readonly<Record<string, ProfileColumn>>, words: Profile['words']) {
    super('bv-shape-settled');
    this.name = name;
    this.columns = columns;
    this.words = words;
  }
}

/** What each column of a file is, to be put right and remembered. Nothing is read anew until the button is pressed. */
@customElement('bv-shape-form')
export class ShapeForm extends LitElement {
  static override styles = [actStyle, shapeFormStyle];

  @property({ attribute: false }) shape!: FileShape;
  @property({ attribute: false }) vocabulary!: Vocabulary;
  /** The name that is proposed. */
  @property({ attribute: false }) name = '';
  @property({ attribute: false }) busy = false;
  /** What is changed and not yet read, by what a profile calls the column. */
  @state() private draft: ReadonlyMap<string, ProfileColumn> = new Map();

  /** What words that nobody knows are to mean. */
  @state() private words: Profile['words'] = NO_WORDS;

  private get isChanged(): boolean {
    return this.draft.size + Object.keys(this.words.fire).length + Object.keys(this.words.state).length > 0;
  }

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('shape')) return;
    this.draft = new Map();
    this.words = NO_WORDS;
  }

  override render(): TemplateResult {
    const { shape } = this;
    const settled = shape.profile !== '' && !this.isChanged;
    return html`<form @submit=${this.settle}>
      <div class="wide"><table><thead><tr>${say.columnHeads().map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
        <tbody>${shape.columns.map((column) => this.line(column))}</tbody></table></div>
      ${
        settled
          ? nothing
          : html`<footer><label>${say.rememberUnder()} <input type="text" name="name" required maxlength="80" autocomplete="off" .value=${this.name} /></label>
            <button type="submit" ?disabled=${this.busy}>${this.isChanged ? say.readItSo() : say.theseAreRight()}</button></footer>`
      }</form>`;
  }

  private line(column: FileColumn): TemplateResult {
    const { key, firstValue, sure } = column;
    const now = this.draft.get(key) ?? column;
    const changed = this.draft.has(key);
    const marks = [
      now.field === '' ? 'unread' : '',
      changed ? 'changed' : '',
      !changed && now.field !== '' && sure < SURE ? 'doubt' : '',
    ];
    return html`<tr class=${marks.filter(Boolean).join(' ')}><th scope="row">${key}</th><td class="value">${firstValue}</td>
      <td class="is-cell">${key === '' ? say.notUsed() : this.choices(key, now)}${now.field === column.field ? this.meanings(column) : nothing}</td>
      <td>${changed || now.field === '' ? nothing : html`<span class="sure">${say.percentSure(sure)}</span>`}</td>
      <td class="why">${changed || (this.shape.profile !== '' && column.field !== '') ? nothing : column.reason}</td></tr>`;
  }

  private choices(key: string, now: ProfileColumn): TemplateResult {
    const { fields } = this.vocabulary;
    const field = fields.get(now.field);
    const names = [...fields.keys()].map((name) => ({ code: name, label: say.fieldWords(name) }));
    const units = unitChoices(field, now.unit);
    const { columns } = this.shape;
    // Where a column names the fire or the state, no head has to.
    const placed = (word: 'fire' | 'state'): boolean =>
      field?.measured === true && fields.has(word) && (now[word] !== '' || columns.every((one) => one.field !== word));
    const put = (part: Partial<ProfileColumn>): void => this.put(key, { ...columnOf(now), ...part });
    return html`<div class="is">
      ${picked(say.fieldOf(key), now.field, [{ code: '', label: say.notUsed() }, ...names], (name) => put(this.fresh(name, now)))}
      ${units.length > 1 ? picked(say.unitOf(key), now.unit, units, (unit) => put({ unit })) : nothing}
      ${placed('fire') ? picked(say.fireOf(key), now.fire, words(say.anyFire(), FIRES), (fire) => put({ fire })) : nothing}
      ${placed('state') ? picked(say.stateOf(key), now.state, words(say.anyState(), STATES), (state) => put({ state })) : nothing}
    </div>`;
  }

  /** A choice for each word of a column of fires or states that nobody knows. */
  private meanings({ field, words: unknown }: FileColumn): TemplateResult | typeof nothing {
    if (unknown.length === 0 || (field !== 'fire' && field !== 'state')) return nothing;
    return html`<div class="is">${unknown.map((word) => {
      const put = (meaning: string): void => {
        const { [word]: _, ...others } = this.words[field];
        this.words = { ...this.words, [field]: meaning === '' ? others : { ...others, [word]: meaning } };
      };
      return picked(tell.meaningOf(word), this.words[field][word] ?? '', meaningChoices(field, word), put);
    })}</div>`;
  }

  /** Another field keeps the unit only where it can be given in it. */
  private fresh(name: string, { unit }: ProfileColumn): Partial<ProfileColumn> {
    const field: Field | undefined = this.vocabulary.fields.get(name);
    const codes = unitChoices(field, '').map(({ code }) => code);
    const kept = codes.includes(unit) ? unit : (codes[0] ?? field?.unit ?? '');
    return { field: name, unit: kept, ...(field?.measured ? {} : { fire: '', state: '' }) };
  }

  private put(key: string, column: ProfileColumn): void {
    const was = this.shape.columns.find((one) => one.key === key);
    const draft = new Map(this.draft);
    if (was && JSON.stringify(columnOf(was)) === JSON.stringify(column)) draft.delete(key);
    else draft.set(key, column);
    this.draft = draft;
  }

  private settle(event: SubmitEvent): void {
    event.preventDefault();
    const name = String(new FormData(event.currentTarget as HTMLFormElement).get('name') ?? '').trim();
    if (name !== '') this.dispatchEvent(new ShapeSettled(name, Object.fromEntries(this.draft), this.words));
  }
}

const NO_WORDS: Profile['words'] = { fire: {}, state: {} };

function meaningChoices(field: 'fire' | 'state', word: string): { code: string; label: string }[] {
  const known = (field === 'fire' ? FIRES : STATES).map((code) => ({ code, label: plainWords(code) }));
  const open =
    field === 'fire'
      ? { code: 'unnamed', label: tell.noFireNamed() }
      : { code: 'unknown', label: tell.stateNotKnown() };
  return [
    { code: '', label: tell.wordAside(word) },
    ...[...known, open].map(({ code, label }) => ({ code, label: tell.wordMeans(word, label) })),
  ];
}

const columnOf = ({ field, unit, fire, state }: ProfileColumn): ProfileColumn => ({ field, unit, fire, state });

const words = (any: string, codes: readonly string[]): { code: string; label: string }[] => [
  { code: '', label: any },
  ...codes.map((code) => ({ code, label: plainWords(code) })),
];

function picked(
  label: string,
  now: string,
  options: readonly { readonly code: string; readonly label: string }[],
  take: (code: string) => void,
): TemplateResult {
  return html`<select aria-label=${label} @change=${(event: Event) => take((event.target as HTMLSelectElement).value)}>${options.map(
    ({ code, label: shown }) => html`<option value=${code} .selected=${code === now}>${shown}</option>`,
  )}</select>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-shape-form': ShapeForm;
  }
  interface HTMLElementEventMap {
    'bv-shape-settled': ShapeSettled;
  }
}
