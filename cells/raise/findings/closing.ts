import type { FleetReadings } from '../fleet.ts';

/**
 * Tells whether a reading is closed: whether any of the closing readings was surely taken after it. On the same day the
 * time of day decides where both have one, else the order inside a visit (as found, trials, as left); readings that
 * neither tells apart are not later. One pass over the closers, however many there are.
 */
export function closedBy({ day, stage }: FleetReadings, closers: readonly number[]): (row: number) => boolean {
  const lastDay = closers.reduce((last, row) => Math.max(last, Math.floor(day[row])), Number.NEGATIVE_INFINITY);
  // On the last day: the furthest stage of those without a time and of those with one, and the latest time.
  let [untimed, timed, latest, latestStage] = [-1, -1, Number.NEGATIVE_INFINITY, -1];
  for (const row of closers) {
    if (Math.floor(day[row]) !== lastDay) continue;
    if (day[row] === lastDay) untimed = Math.max(untimed, stage[row]);
    else {
      timed = Math.max(timed, stage[row]);
      if (day[row] > latest) [latest, latestStage] = [day[row], stage[row]];
      else if (day[row] === latest) latestStage = Math.max(latestStage, stage[row]);
    }
  }
  return (row) => {
    const date = Math.floor(day[row]);
    if (date !== lastDay) return date < lastDay;
    if (untimed > stage[row]) return true;
    if (day[row] === date) return timed > stage[row];
    return latest > day[row] || (latest === day[row] && latestStage > stage[row]);
  };
}
