import { ownNotebook } from '../../shared/messages/page.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import type { OwnFile, PageSession } from './page-session.ts';
import { startSession } from './start-session.ts';

/** A campus review over the user's own files, looking from today. */
export async function openOwnFiles(files: readonly OwnFile[]): Promise<PageSession> {
  const keys = (role: OwnFile['role']): string[] =>
    files.filter((file) => file.role === role).map(({ file }) => file.name);
  const session = startSession();
  await session.openReview(
    {
      title: ownNotebook(),
      asOf: today(),
      readings: keys('readings'),
      register: keys('register'),
      events: keys('events'),
      fuelUse: keys('fuel-use'),
    },
    files.map(({ file }) => ({ key: file.name, name: file.name, blob: file })),
  );
  return session;
}

/** The user's own calendar day, not that of Greenwich. */
function today(): string {
  const now = new Date();
  return writeDay(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86_400_000);
}
