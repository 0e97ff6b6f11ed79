import type { FilePlan } from './mapping.ts';

/** Columns of a file that are not read because another one is the same thing. */
export function rivalsOf({ file, columns }: FilePlan): { file: string; head: string; of: string }[] {
  return columns.flatMap(({ head, rival }) =>
    rival === undefined ? [] : [{ file, head: head.trim(), of: rival.trim() }],
  );
}
