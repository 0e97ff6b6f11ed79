import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  bytesWord,
  roleEvents,
  roleFuelUse,
  roleNotebook,
  roleReadings,
  roleRegister,
  roleUnknown,
  trayChoose,
  trayClose,
  trayDrop,
  trayFolder,
  trayHead,
  trayLeftOut,
  trayNeedsReadings,
  trayNeedsRole,
  trayOpen,
  trayRemove,
  trayRole,
  trayText,
  trayWantsRegister,
} from '../../../shared/messages/page.ts';
import { chosenOfFolder, tablesAmong } from '../files/folder-files.ts';
import { guessRole } from '../files/guess-role.ts';
import { readBeginning } from '../files/read-beginning.ts';
import type { FileRole, OwnFile } from '../page-session.ts';
import { LightElement } from './light-element.ts';

const ROLES: readonly (readonly [FileRole, string])[] = [
  ['readings', roleReadings()],
  ['register', roleRegister()],
  ['events', roleEvents()],
  ['fuel-use', roleFuelUse()],
  ['notebook', roleNotebook()],
];

/** A file in the tray; its part is undefined until somebody says what it holds. */
interface LaidOut {
  readonly role: FileRole | undefined;
  readonly file: File;
}

/** Where the user's own CSV files are laid out, each with the part it plays, before they are opened together. */
@customElement('bv-own-files')
export class OwnFiles extends LightElement {
  @property() failure = '';
  @property() doing = '';
  /** Names of the files that the open notebook misses: these alone may be opened by themselves. */
  @property({ attribute: false }) missing: readonly string[] = [];
  @state() private files: readonly LaidOut[] = [];
  @state() private faults: readonly string[] = [];

  /** Files of the same name replace those laid out before. */
  async add(files: Iterable<File>): Promise<void> {
    const faults: string[] = [];
    const { tables, others } = tablesAmong(files);
    if (others.length > 0) faults.push(trayLeftOut(others.length, others.slice(0, 3).join(', ')));
    for (const file of tables) {
      const beginning = await readBeginning(file);
      if (beginning.status === 'value') {
        const role = guessRole(file.name, beginning.value);
        this.files = [...this.files.filter((own) => own.file.name !== file.name), { role, file }];
      } else if (beginning.status === 'error') faults.push(beginning.message);
    }
    this.faults = faults;
  }

  override render(): TemplateResult {
    const has = (role: FileRole): boolean => this.files.some((file) => file.role === role);
    const isMissing = this.files.every(({ file }) => this.missing.includes(file.name));
    const unsaid = this.files.find(({ role }) => role === undefined);
    const isWhole = has('readings') || has('notebook');
    const canOpen = !unsaid ? isWhole || (isMissing && this.files.length > 0) : false;
    return html`<section class="tray" aria-labelledby="tray-head">
      <h2 id="tray-head">${trayHead()}</h2>
      <p>${trayText()}</p>
      <p class="acts"><label class="act strong file">${trayChoose()}<input type="file" multiple accept=".csv,.txt,.tsv,.json,text/csv,text/plain,application/json" @change=${this.onChoose} /></label>
        <label class="act file">${trayFolder()}<input type="file" webkitdirectory multiple @change=${this.onFolder} /></label>
        <span class="drop-hint">${trayDrop()}</span></p>
      ${this.faults.map((fault) => html`<p class="fault" role="alert">${fault}</p>`)}
      ${this.files.length === 0 ? nothing : html`<ul class="files">${this.files.map((own) => this.line(own))}</ul>`}
      ${this.failure === '' ? nothing : html`<p class="fault" role="alert">${this.failure}</p>`}
      ${unsaid ? html`<p class="fault">${trayNeedsRole(unsaid.file.name)}</p>` : nothing}
      ${this.files.length > 0 && !has('readings') && !canOpen && !unsaid ? html`<p class="hint">${trayNeedsReadings()}</p>` : nothing}
      ${has('readings') && !has('register') && !has('notebook') && !unsaid ? html`<p class="hint">${trayWantsRegister()}</p>` : nothing}
      <p class="acts">
        <button type="button" class="act strong" ?disabled=${!canOpen || this.doing !== ''} @click=${this.open}>${trayOpen()}</button>
        <button type="button" class="act" @click=${() => this.dispatchEvent(new CustomEvent('bv-close-tray', { bubbles: true }))}>${trayClose()}</button>
        <span role="status">${this.doing}</span>
      </p>
    </section>`;
  }

  private line(own: LaidOut): TemplateResult {
    const { file, role } = own;
    return html`<li><span class="file-name">${file.name}</span> <span class="size">${bytesWord(file.size)}</span>
      <select class="blank" aria-label=${trayRole(file.name)} @change=${(event: Event) => this.setRole(own, (event.target as HTMLSelectElement).value as FileRole)}>
        ${role === undefined ? html`<option value="" selected>${roleUnknown()}</option>` : nothing}
        ${ROLES.map(([value, label]) => html`<option value=${value} .selected=${value === role}>${label}</option>`)}
      </select>
      <button type="button" class="act small" aria-label=${trayRemove(file.name)} @click=${() => {
        this.files = this.files.filter((other) => other !== own);
      }}>✕</button></li>`;
  }

  private setRole(own: LaidOut, role: FileRole): void {
    this.files = this.files.map((other) => (other === own ? { ...own, role } : other));
  }

  private onChoose(event: Event): void {
    const input = event.target as HTMLInputElement;
    void this.add([...(input.files ?? [])]);
    input.value = '';
  }

  private onFolder(event: Event): void {
    const input = event.target as HTMLInputElement;
    void this.add(chosenOfFolder(input.files ?? []));
    input.value = '';
  }

  private open(): void {
    const told = this.files.flatMap(({ role, file }) => (role === undefined ? [] : [{ role, file }]));
    this.dispatchEvent(new CustomEvent<readonly OwnFile[]>('bv-own-files', { detail: told, bubbles: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bv-own-files': OwnFiles;
  }
}
