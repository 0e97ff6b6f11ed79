import type { ReadingColumns } from './reading-columns.ts';

/**
 * Order of rows by where they stand: file name by code unit, then place in the file. The order in which files were given
 * does not count, so that it changes no result.
 */
export function rowOrigin(columns: ReadingColumns): (a: number, b: number) => number {
  const byName = columns.files.map((name, file) => ({ name, file })).sort((a, b) => (a.name < b.name ? -1 : 1));
  const place = Int32Array.from(columns.files, (_, file) => byName.findIndex((entry) => entry.file === file));
  if (columns.files.length < 2) return (a, b) => a - b;
  return (a, b) => place[columns.fileOf(a)] - place[columns.fileOf(b)] || a - b;
}
