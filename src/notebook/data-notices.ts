import type { SourceFile, SourceKey } from '../../shared/cell.ts';
import * as say from '../../shared/messages/notebook.ts';
import type { NotebookDocument } from './document.ts';

/** One sentence for each data file that is missing or is not the one the notebook was saved with. */
export function dataNotices({ data }: NotebookDocument, files: ReadonlyMap<SourceKey, SourceFile>): string[] {
  return data.flatMap(({ key, name, hash }) => {
    const file = files.get(key);
    if (!file) return [say.absentData(name)];
    return hash !== '' && file.hash !== hash ? [say.changedData(name)] : [];
  });
}
