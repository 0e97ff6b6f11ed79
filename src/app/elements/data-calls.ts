import { html, nothing, type TemplateResult } from 'lit';
import * as say from '../../../shared/messages/data-at-hand.ts';
import type { PageSession } from '../page-session.ts';

/** What the page does when the user settles where a data file is. */
export interface DataCallsHost {
  /** The chosen file plays the part of the one that the notebook lists under this key. */
  foundFile(key: string, file: File): void;
  /** Files that are matched to the missing ones by their names. */
  foundFiles(files: readonly File[]): void;
  acceptFile(key: string): void;
}

/** Data files that are missing, or are not as they were when the notebook was saved, each with a way to settle it. */
export function dataCalls(
  { missing, changed }: Pick<PageSession['head'], 'missing' | 'changed'>,
  host: DataCallsHost,
): TemplateResult | typeof nothing {
  if (missing.length + changed.length === 0) return nothing;
  return html`${missing.length === 1 ? missingOne(missing[0], host) : nothing}
    ${missing.length > 1 ? missingMany(missing, host) : nothing}
    ${changed.map((key) => changedOne(key, host))}`;
}

const missingOne = (key: string, host: DataCallsHost): TemplateResult => html`<div class="news fault data-call">
  <p>${say.missingFile(key)}</p>
  <p>${chooser(say.findFile(), say.findFileNamed(key), (file) => host.foundFile(key, file))}</p>
</div>`;

const missingMany = (
  keys: readonly string[],
  host: DataCallsHost,
): TemplateResult => html`<div class="news fault data-call">
  <p>${say.missingFiles(keys.length)}</p>
  <p>${together(host)}</p>
  <ul>${keys.map(
    (key) =>
      html`<li><span class="file-name">${key}</span> ${chooser(say.findFile(), say.findFileNamed(key), (file) => host.foundFile(key, file))}</li>`,
  )}</ul>
</div>`;

const changedOne = (key: string, host: DataCallsHost): TemplateResult => html`<div class="news data-call">
  <p>${say.changedFile(key)}</p>
  <p>${chooser(say.findOther(), say.findOtherNamed(key), (file) => host.foundFile(key, file))}
    <button type="button" class="act" aria-label=${say.takeAsItIsNamed(key)} @click=${() => host.acceptFile(key)}>${say.takeAsItIs()}</button></p>
</div>`;

const chooser = (words: string, label: string, chosen: (file: File) => void): TemplateResult =>
  html`<label class="act file">${words}<input type="file" aria-label=${label} @change=${(event: Event) => {
    const [file] = filesOf(event);
    if (file) chosen(file);
  }} /></label>`;

const together = (host: DataCallsHost): TemplateResult =>
  html`<label class="act file">${say.findTogether()}<input type="file" multiple aria-label=${say.findTogether()} @change=${(
    event: Event,
  ) => host.foundFiles(filesOf(event))} /></label>`;

/** A second choice of the same file is a choice again. */
function filesOf(event: Event): File[] {
  const input = event.target as HTMLInputElement;
  const files = [...(input.files ?? [])];
  input.value = '';
  return files;
}
