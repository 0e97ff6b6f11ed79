import type { NotebookDocument } from './document.ts';

/** The file as saved: two spaces, one field a line, a newline at the end, so that it reads well in a diff. */
export function writeDocument(document: NotebookDocument): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}
