import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Blank } from '../../../shared/cell.ts';
import {
  addFilesWord,
  blankHint,
  blankLabel,
  emptyBlank,
  filesDone,
  filesOf,
  noCell,
  openFilesWord,
  trayRemove,
} from '../../../shared/messages/page.ts';
import { shownAmount } from '../../../shared/sentence/shown-amount.ts';
import { readEntry } from '../entry/read-entry.ts';
import { LightElement } from './light-element.ts';

/** Tells the strip what the user put into a blank. */
export class BlankChange extends CustomEvent<{ readonly parameter: string; readonly value: unknown }> {
  constructor(parameter: string, value: unknown) {
    super('bv-blank', { detail: { parameter, value }, bubbles: true });
  }
}

/** Tells the strip which files the user added to a blank that lists files. */
export class FilesAdded extends CustomEvent<{ readonly parameter: string; readonly files: readonly File[] }> {
  constructor(parameter: string, files: readonly File[]) {
    super('bv-add-files', { detail: { parameter, files }, bubbles: true });
  }
}

/** One blank of a sentence: reads as part of it, and is edited where it stands, by pointer or keyboard. */
@customElement('bv-blank')
export class BlankField extends LightElement {
  @property({ attribute: false }) blank!: Blank;
  /** The parameter's value as the notebook holds it. */
  @property({ attribute: false }) value: unknown;
  /** Cells that a 'cell' blank may name. */
  @property({ attribute: false }) cells: readonly string[] = [];
  @state() private open = false;
  @state() private fault = '';

  override render(): TemplateResult {
    const { entry } = this.blank;
    if (entry.kind === 'choice') return this.choice(entry.options);
    if (entry.kind === 'cell') {
      const named = this.cells.map((name) => ({ value: name, label: name }));
      return this.choice(entry.optional ? [{ value: '', label: noCell(this.blank.label) }, ...named] : named);
    }
    if (!this.open) return this.closed(() => this.begin());
    if (entry.kind === 'files') return this.filesEntry();
    if (entry.kind === 'number') return this.shortEntry(entry.unit);
    const isProse = this.blank.parameter === 'text' || isLong(this.value);
    return isProse ? this.longEntry() : this.shortEntry('');
  }

  private closed(act: () => void): TemplateResult {
    const empty = this.blank.entry.kind === 'files' ? openFilesWord() : emptyBlank();
    const text = this.blank.text === '' ? empty : this.blank.text;
    return html`<button class="blank" type="button" aria-label=${blankLabel(this.blank.label, text)} @click=${act}>${text}</button>`;
  }

  private choice(options: readonly { value: string; label: string }[]): TemplateResult {
    const now = this.value === null || this.value === undefined ? '' : String(this.value);
    const known = options.some(({ value }) => value === now);
    return html`<select class="blank" aria-label=${this.blank.label} @change=${(event: Event) =>
      this.keep(likeBefore((event.target as HTMLSelectElement).value, this.value))}>
      ${known ? nothing : html`<option value=${now} selected>${this.blank.text}</option>`}
      ${options.map(({ value, label }) => html`<option value=${value} ?selected=${value === now} .selected=${value === now}>${label}</option>`)}
    </select>`;
  }

  private shortEntry(unit: string): TemplateResult {
    const { entry } = this.blank;
    const isNumber = entry.kind === 'number';
    const factor = isNumber ? entry.factor : 1;
    const now = typeof this.value === 'number' ? shownAmount(this.value, factor) : String(this.value ?? '');
    return html`<span class="entry"><input type="text" inputmode=${isNumber ? 'decimal' : 'text'} autocomplete="off" .value=${now} size=${Math.max(isNumber ? 4 : 14, now.length + 1)}
        aria-label=${blankHint(this.blank.label, unit)} aria-invalid=${this.fault === '' ? 'false' : 'true'}
        @keydown=${this.onKey} @blur=${this.onBlur}
        />${unit !== '' && this.blank.text.includes(unit) ? html`<span class="unit">${unit}</span>` : nothing}${this.complaint()}</span>`;
  }

  private longEntry(): TemplateResult {
    return html`<span class="entry"><textarea rows="3" .value=${String(this.value ?? '')} aria-label=${blankHint(this.blank.label, '')}
      @keydown=${this.onKey} @blur=${this.onBlur}></textarea></span>`;
  }

  private filesEntry(): TemplateResult {
    const files = Array.isArray(this.value) ? this.value.map(String) : [];
    return html`<span class="entry files" role="group" aria-label=${filesOf(this.blank.label)}>
      ${files.map(
        (name) =>
          html`<span class="file-name">${name} <button type="button" class="act small" aria-label=${trayRemove(name)} @click=${() =>
            this.keep(files.filter((other) => other !== name))}>✕</button></span>`,
      )}
      <label class="act small file">${addFilesWord()}<input type="file" multiple accept=".csv,.txt,.tsv,text/csv,text/plain" @change=${this.onFiles} /></label>
      <button type="button" class="act small" @click=${() => this.close()}>${filesDone()}</button>
    </span>`;
  }

  private onFiles(event: Event): void {
    const files = [...((event.target as HTMLInputElement).files ?? [])];
    if (files.length > 0) this.dispatchEvent(new FilesAdded(this.blank.parameter, files));
  }

  private complaint(): TemplateResult | typeof nothing {
    return this.fault === '' ? nothing : html`<span class="fault" role="alert">${this.fault}</span>`;
  }

  private async begin(): Promise<void> {
    this.open = true;
    this.fault = '';
    await this.updateComplete;
    const field = this.querySelector<HTMLInputElement | HTMLTextAreaElement>('input, textarea');
    field?.focus();
    field?.select();
  }

  private onKey(event: KeyboardEvent): void {
    const field = event.currentTarget as HTMLInputElement | HTMLTextAreaElement;
    if (event.key === 'Escape') {
      event.stopPropagation();
      void this.close();
    } else if (event.key === 'Enter' && !event.shiftKey) {
      event.preventDefault();
      if (this.take(field.value)) void this.close();
    }
  }

  /** Leaving the blank keeps what was typed when it can be read, else leaves everything as it was. */
  private onBlur(event: FocusEvent): void {
    if (!this.open) return;
    this.take((event.currentTarget as HTMLInputElement).value);
    this.open = false;
    this.fault = '';
  }

  private async close(): Promise<void> {
    this.open = false;
    this.fault = '';
    await this.updateComplete;
    this.querySelector<HTMLElement>('button')?.focus();
  }

  private take(typed: string): boolean {
    const read = readEntry(this.blank, typed);
    if (read.status !== 'value') {
      this.fault = read.status === 'error' ? read.message : '';
      return false;
    }
    this.keep(read.value);
    return true;
  }

  private keep(value: unknown): void {
    if (value === this.value || (value === null && this.value === undefined)) return;
    this.dispatchEvent(new BlankChange(this.blank.parameter, value));
  }
}

/** Text that wants more than a line: sentences, and whatever holds line breaks already. */
function isLong(value: unknown): boolean {
  const text = String(value ?? '');
  return text.length > 48 || text.includes('\n');
}

/** An option's text as the type that the parameter has: "false" for a switch is false. */
function likeBefore(chosen: string, before: unknown): unknown {
  if (typeof before === 'boolean') return chosen === 'true';
  return typeof before === 'number' ? Number(chosen) : chosen;
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-blank': BlankField;
  }
}
