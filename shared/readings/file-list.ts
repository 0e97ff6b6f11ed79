import type { Blank } from '../cell.ts';

/** The blank of a sentence that holds a cell's data files. */
export function fileList(files: readonly string[]): Blank {
  const text = files.length === 0 ? 'no file yet' : files.length > 3 ? `${files.length} files` : files.join(', ');
  return { parameter: 'files', label: 'data files', text, entry: { kind: 'files' } };
}
