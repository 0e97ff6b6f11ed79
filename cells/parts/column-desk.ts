import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { answerValue } from '../../shared/answer-value.ts';
import type { CellState } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/columns.ts';
import { answerProfile } from '../../shared/readings/answer-profile.ts';
import type { Profile } from '../../shared/readings/profile.ts';
import type { Vocabulary } from '../../shared/readings/vocabulary.ts';
import type { ViewHost } from '../../shared/view-host.ts';
import { actStyle } from './act-style.ts';
import { type FileShape, fileShapes, hasUnknownWords, leastSure, unreadHeads } from './file-shapes.ts';
import './shape-form.ts';
import type { ShapeSettled } from './shape-form.ts';

const MOST_COLUMNS = 4000;
/** Shapes shown at first. */
const FIRST = 6;

/** How the heads of a cell's files were understood, shape by shape: to be looked through, put right and remembered. */
@customElement('bv-columns')
export class ColumnDesk extends LitElement {
  static override styles = [
    actStyle,
    css`
    :host { display: block; margin: 0 0 22px; }
    h3 { margin: 0 0 4px; font-size: 1rem; }
    p { margin: 0 0 6px; color: var(--ink-2); }
    details { border-top: 1px solid var(--rule); }
    details:last-of-type { border-bottom: 1px solid var(--rule); margin-bottom: 8px; }
    summary { padding: 10px 0; cursor: pointer; overflow-wrap: anywhere; }
    summary:focus-visible, a:focus-visible { outline: 3px solid var(--act); outline-offset: 2px; }
    ul { list-style: none; margin: 0; padding: 0; }
    li { display: flex; flex-wrap: wrap; gap: 4px 20px; align-items: center; }
    a { color: var(--act); }
  `,
  ];

  @property({ attribute: false }) cell!: CellState;
  @property({ attribute: false }) host!: Pick<ViewHost, 'rows' | 'setParameter'>;
  /** What the columns of the cell's files can be. */
  @property({ attribute: false }) vocabulary!: Vocabulary;
  @state() private shapes: readonly FileShape[] = [];
  @state() private all = false;
  @state() private busy = false;

  private askedVersion = -1;

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('cell') || this.cell.version === this.askedVersion) return;
    this.askedVersion = this.cell.version;
    void this.ask(this.cell.version);
  }

  private get profiles(): readonly Profile[] {
    return (this.cell.parameters as { profiles?: readonly Profile[] }).profiles ?? [];
  }

  private async ask(version: number): Promise<void> {
    const page = await this.host.rows(this.cell.name, { table: 'columns', from: 0, to: MOST_COLUMNS });
    if (version !== this.askedVersion) return;
    this.shapes = fileShapes({ rows: Math.min(page.total, MOST_COLUMNS), columns: page.columns });
  }

  override render(): TemplateResult | typeof nothing {
    const { shapes, profiles } = this;
    if (shapes.length + profiles.length === 0) return nothing;
    const shown = this.all ? shapes : shapes.slice(0, FIRST);
    return html`<h3>${say.columnsHead()}</h3><p>${say.columnsNote()}</p>
      ${shown.map((shape) => this.shape(shape))}
      ${
        shown.length < shapes.length
          ? html`<button type="button" @click=${() => {
              this.all = true;
            }}>${say.showAllFiles(shapes.length)}</button>`
          : nothing
      }
      ${profiles.length > 0 ? html`<h3>${say.remembered()}</h3><ul>${profiles.map((profile) => this.kept(profile))}</ul>` : nothing}`;
  }

  private shape(shape: FileShape): TemplateResult {
    const { file, line, more, profile, columns } = shape;
    const least = profile === '' ? leastSure(shape) : undefined;
    const used = columns.filter(({ field }) => field !== '').length;
    const told = say.shapeSummary(used, unreadHeads(shape), least?.head ?? '', least?.sure ?? Number.NaN);
    return html`<details ?open=${least !== undefined || hasUnknownWords(shape)}><summary><b>${say.shapeName(file, line, more)}</b>: ${told}${profile === '' ? '' : html`, ${say.byProfile(profile)}`}.</summary>
      <bv-shape-form .shape=${shape} .vocabulary=${this.vocabulary} .name=${this.nameFor(shape)} .busy=${this.busy} @bv-shape-settled=${(event: ShapeSettled) => this.settle(shape, event)}></bv-shape-form></details>`;
  }

  private kept(profile: Profile): TemplateResult {
    const { name, file } = profile;
    const text = `data:application/json;charset=utf-8,${encodeURIComponent(`${JSON.stringify(profile, null, 2)}\n`)}`;
    return html`<li><b>${name}</b> ${file === '' ? nothing : say.onlyFor(file)} <a href=${text} download=${`${name.replace(/[^\p{L}\p{N}._-]+/gu, '-')}.json`}>${say.saveForCommands()}</a>
      <button type="button" ?disabled=${this.busy} aria-label=${`${say.forget()}: ${name}`} @click=${() => this.keep(this.profiles.filter((one) => one !== profile))}>${say.forget()}</button></li>`;
  }

  /** A profile that other shapes are read by as well keeps its name to itself. */
  private nameFor({ file, line, profile }: FileShape): string {
    const shared = this.shapes.filter((other) => other.profile === profile).length > 1;
    return profile !== '' && !shared ? profile : say.shapeName(file, line, 0);
  }

  private settle({ profile, columns }: FileShape, { name, columns: changed, words }: ShapeSettled): void {
    const base = this.profiles.find((one) => one.name === profile);
    const made = answerProfile(this.vocabulary.table, name, base && { ...base, name }, columns, {
      columns: changed,
      words,
    });
    void this.keep(answerValue(this.profiles, '', { ...made }) as readonly Profile[]);
  }

  private async keep(profiles: readonly Profile[]): Promise<void> {
    this.busy = true;
    try {
      await this.host.setParameter(this.cell.name, 'profiles', profiles);
    } finally {
      this.busy = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-columns': ColumnDesk;
  }
}
