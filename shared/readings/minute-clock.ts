import { type ReadingColumns, ROW } from './reading-columns.ts';

const SECONDS = 86_400;
const MINUTE_S = 60;
const TOLERANCE_S = 0.5;
/** So many minutes that follow one another, with so many lines in all, are a log whose clock shows no seconds. */
const LEAST_MINUTES = 3;
const LEAST_LINES = 15;

/**
 * Seconds that the lines of such logs are behind their minute, by row: they are spread over it evenly, those of a first
 * minute that is not full towards its end. Nothing of other rows.
 */
export function minuteOffsets(
  columns: ReadingColumns,
  file: number,
  sameTest: (row: number, other: number) => boolean,
): ReadonlyMap<number, number> {
  const offsets = new Map<number, number>();
  const taken = columns.numbers.get('taken_at')!.values;
  const rows: number[] = [];
  const counts: number[] = [];
  const close = (): void => {
    const full = counts.slice(1, -1);
    const usual = Math.max(...counts);
    if (counts.length >= LEAST_MINUTES && rows.length >= LEAST_LINES && full.every((count) => count > 1)) {
      let at = 0;
      counts.forEach((count, minute) => {
        const isLast = minute === counts.length - 1;
        const parts = minute === 0 || isLast ? usual : count;
        const before = minute === 0 ? usual - count : 0;
        for (let i = 0; i < count; i++) offsets.set(rows[at++], ((before + i) * MINUTE_S) / parts);
      });
    }
    rows.length = 0;
    counts.length = 0;
  };
  let last = -1;
  const end = columns.fileEnd(file);
  for (let row = columns.fileStarts[file]; row < end; row++) {
    if (columns.status[row] !== ROW.accepted) continue;
    const step = last < 0 ? Number.NaN : (taken[row] - taken[last]) * SECONDS;
    const isSame = Math.abs(step) < TOLERANCE_S;
    const isNext = Math.abs(step - MINUTE_S) < TOLERANCE_S;
    if ((isSame || isNext) && sameTest(row, last)) {
      if (rows.length === 0) {
        rows.push(last);
        counts.push(1);
      }
      if (isNext) counts.push(0);
      counts[counts.length - 1]++;
      rows.push(row);
    } else if (rows.length > 0) close();
    last = row;
  }
  if (rows.length > 0) close();
  return offsets;
}
