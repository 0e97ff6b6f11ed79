import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import * as say from '../../shared/messages/columns.ts';
import type { Field } from '../../shared/readings/fields.ts';
import type { ProfileColumn } from '../../shared/readings/profile.ts';
import type { Vocabulary } from '../../shared/readings/vocabulary.ts';
import { actStyle } from './act-style.ts';
import { type FileColumn, type FileShape, SURE, singleHeads, unitChoices } from './file-shapes.ts';
import { shapeFormStyle } from './shape-form-style.ts';
import { plainWords } from './shown-value.ts';

const FIRES = ['high', 'low', 'mid', 'single'];
const STATES = ['as_found', 'as_left', 'trial'];

/** The columns of a shape as the user wants them read, and the name to remember it by. */
export class ShapeSettled extends Event {
  readonly name: string;
  readonly columns: Readonly<Record<string, ProfileColumn>>;
  constructor(name: string, columns: Readonly<Record<string, ProfileColumn>>) {
    super('bv-shape-settled');
    this.name = name;
    this.columns = columns;
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
  @state() private draft: Readonly<Record<string, ProfileColumn>> = {};

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('shape')) this.draft = {};
  }

  override render(): TemplateResult {
    const { shape, draft } = this;
    const single = singleHeads(shape);
    const settled = shape.profile !== '' && Object.keys(draft).length === 0;
    return html`<form @submit=${this.settle}>
      <div class="wide"><table><thead><tr>${say.columnHeads().map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
        <tbody>${shape.columns.map((column) => this.line(column, single.has(column.head)))}</tbody></table></div>
      ${
        settled
          ? nothing
          : html`<footer><label>${say.rememberUnder()} <input type="text" name="name" required maxlength="80" autocomplete="off" .value=${this.name} /></label>
            <button type="submit" ?disabled=${this.busy}>${Object.keys(draft).length > 0 ? say.readItSo() : say.theseAreRight()}</button></footer>`
      }</form>`;
  }

  private line(column: FileColumn, single: boolean): TemplateResult {
    const { head, firstValue, sure } = column;
    const now = this.draft[head] ?? column;
    const changed = head in this.draft;
    const marks = [
      now.field === '' ? 'unread' : '',
      changed ? 'changed' : '',
      !changed && now.field !== '' && sure < SURE ? 'doubt' : '',
    ];
    return html`<tr class=${marks.filter(Boolean).join(' ')}><th scope="row">${head}</th><td class="value">${firstValue}</td>
      <td class="is-cell">${single ? this.choices(head, now) : html`${now.field === '' ? say.notUsed() : say.fieldWords(now.field)}`}</td>
      <td>${changed || now.field === '' ? nothing : html`<span class="sure">${say.percentSure(sure)}</span>`}</td>
      <td class="why">${single || head === '' ? (changed || (this.shape.profile !== '' && column.field !== '') ? nothing : column.reason) : say.twiceInHead()}</td></tr>`;
  }

  private choices(head: string, now: ProfileColumn): TemplateResult {
    const { fields } = this.vocabulary;
    const field = fields.get(now.field);
    const names = [...fields.keys()].map((name) => ({ code: name, label: say.fieldWords(name) }));
    const units = unitChoices(field, now.unit);
    const { columns } = this.shape;
    // Where a column names the fire or the state, no head has to.
    const placed = (word: 'fire' | 'state'): boolean =>
      field?.measured === true && fields.has(word) && (now[word] !== '' || columns.every((one) => one.field !== word));
    const put = (part: Partial<ProfileColumn>): void => this.put(head, { ...columnOf(now), ...part });
    return html`<div class="is">
      ${picked(say.fieldOf(head), now.field, [{ code: '', label: say.notUsed() }, ...names], (name) => put(this.fresh(name, now)))}
      ${units.length > 1 ? picked(say.unitOf(head), now.unit, units, (unit) => put({ unit })) : nothing}
      ${placed('fire') ? picked(say.fireOf(head), now.fire, words(say.anyFire(), FIRES), (fire) => put({ fire })) : nothing}
      ${placed('state') ? picked(say.stateOf(head), now.state, words(say.anyState(), STATES), (state) => put({ state })) : nothing}
    </div>`;
  }

  /** Another field keeps the unit only where it can be given in it. */
  private fresh(name: string, { unit }: ProfileColumn): Partial<ProfileColumn> {
    const field: Field | undefined = this.vocabulary.fields.get(name);
    const codes = unitChoices(field, '').map(({ code }) => code);
    const kept = codes.includes(unit) ? unit : (codes[0] ?? field?.unit ?? '');
    return { field: name, unit: kept, ...(field?.measured ? {} : { fire: '', state: '' }) };
  }

  private put(head: string, column: ProfileColumn): void {
    const was = this.shape.columns.find((one) => one.head === head);
    const { [head]: _, ...others } = this.draft;
    const same = was !== undefined && JSON.stringify(columnOf(was)) === JSON.stringify(column);
    this.draft = same ? others : { ...others, [head]: column };
  }

  private settle(event: SubmitEvent): void {
    event.preventDefault();
    const name = String(new FormData(event.currentTarget as HTMLFormElement).get('name') ?? '').trim();
    if (name !== '') this.dispatchEvent(new ShapeSettled(name, this.draft));
  }
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
