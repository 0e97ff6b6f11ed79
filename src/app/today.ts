import { writeDay } from '../../shared/quantities/dates.ts';

/** The user's own calendar day, not that of Greenwich. */
export function today(): string {
  const now = new Date();
  return writeDay(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86_400_000);
}
