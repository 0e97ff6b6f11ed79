import type { KeptContent, KeptNotebook } from '../storage/kept-store.ts';
import { notebookFile } from './files/save-file.ts';
import { openSession } from './open-session.ts';
import type { PageSession } from './page-session.ts';

/** A notebook as the browser kept it, with those of its data files that are kept. */
export function openKept({ title }: KeptNotebook, { text, files }: KeptContent): Promise<PageSession> {
  return openSession((session) => session.openNotebook(notebookFile(title), text, files));
}
