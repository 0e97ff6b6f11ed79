import type { Page } from 'playwright-core';
import { until } from './watch-page.ts';

/** A file as a chooser hands it over. */
export interface HandedFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

export const csv = (name: string, ...lines: string[]): HandedFile => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(`${lines.join('\n')}\n`),
});
/** A value as JSON, or a text as it is. */
export const json = (name: string, value: unknown): HandedFile =>
  csv(name, typeof value === 'string' ? value : JSON.stringify(value));

/** Lays files in the tray and opens them. */
export async function openFiles(page: Page, files: readonly HandedFile[]): Promise<void> {
  await page.getByRole('button', { name: 'Open your own files' }).click();
  await page.locator('.tray input[type=file]:not([webkitdirectory])').setInputFiles([...files]);
  await until('they lie in the tray', async () => (await page.locator('.tray .files li').count()) === files.length);
  await page.getByRole('button', { name: 'Open these files' }).click();
}

/** The same, once the sample stands, which is opened by itself. */
export async function openFilesAfterSample(page: Page, files: readonly HandedFile[]): Promise<void> {
  await until('the sample', async () => (await page.locator('#cell-raise .answer').count()) > 0, 30);
  await openFiles(page, files);
}

/** The title on the plate. */
export const heading = async (page: Page): Promise<string> => (await page.locator('.plate h1').textContent()) ?? '';

/** A notebook of one data file, a kind of cell that nobody knows, and a note. */
export const SMALL = {
  format: 'between-visits-notebook',
  version: 1,
  title: 'Three cells',
  as_of: '2026-03-31',
  settings: {},
  data: [{ key: 'r.csv', name: 'data/r.csv', size: 1, hash: 'a'.repeat(64) }],
  cells: [
    { name: 'readings', kind: 'readings', parameters: { files: ['r.csv'], register: '' } },
    { name: 'weather', kind: 'weather-station', parameters: { mast: 7 } },
    { name: 'memo', kind: 'note', parameters: { text: 'Seen.' } },
  ],
};
