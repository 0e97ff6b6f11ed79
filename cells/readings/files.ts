import type { OutputFile } from '../../shared/cell.ts';
import type { ReadingsResult } from './compute.ts';

/** accepted.csv, set-aside.csv, and account.json: four counts a file and their sums; beside them, what the lines were. */
export function files({ tables, files }: ReadingsResult): readonly OutputFile[] {
  const total = { rows_read: 0, accepted: 0, set_aside: 0, duplicates: 0 };
  const list = files.map(({ file, rows_read, accepted, set_aside, duplicates }) => {
    total.rows_read += rows_read;
    total.accepted += accepted;
    total.set_aside += set_aside;
    total.duplicates += duplicates;
    return { file, rows_read, accepted, set_aside, duplicates };
  });
  return [
    { name: 'accepted.csv', table: tables['accepted'] },
    { name: 'set-aside.csv', table: tables['set-aside'] },
    { name: 'account.json', json: { files: list, total, lines: files.map(({ file, lines }) => ({ file, ...lines })) } },
  ];
}
