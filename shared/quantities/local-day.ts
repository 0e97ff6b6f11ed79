import { writeDay } from './dates.ts';

/** The user's own calendar day at this moment, YYYY-MM-DD; not that of Greenwich. */
export function localDay(now: Date): string {
  return writeDay(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86_400_000);
}
