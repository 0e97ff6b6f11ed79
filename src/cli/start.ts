import { existsSync } from 'node:fs';
import { join } from 'node:path';
import * as say from '../../shared/messages/command.ts';
import { Session } from '../notebook/session.ts';
import { openNotebook } from './calculate.ts';
import { CommandError } from './command-error.ts';
import { raisedLines } from './raised-lines.ts';
import { readFlags } from './read-flags.ts';
import { servePage } from './serve-page.ts';
import type { Shell } from './shell.ts';

const DEFAULT_PORT = 4173;

/** Prints the raised units of the sample campus, then serves the notebook until it is stopped. */
export async function start(given: readonly string[], shell: Shell): Promise<number> {
  readFlags('start', given, {});
  const port = readPort(shell.environment.PORT);
  const page = join(shell.home, 'dist', 'app');
  if (!existsSync(join(page, 'index.html'))) throw new CommandError(say.pageMissing(page));
  // The port is tried first, so that whoever has to choose another one learns it at once.
  const server = await servePage(page, port);
  try {
    await printSample(shell);
  } catch (cause) {
    server.close();
    throw cause;
  }
  shell.out('');
  shell.out(say.serving(`http://localhost:${port}/`));
  return new Promise((resolve) => {
    const end = (): void => {
      server.close();
      server.closeAllConnections();
      resolve(0);
    };
    process.once('SIGINT', end);
    process.once('SIGTERM', end);
  });
}

function readPort(text: string | undefined): number {
  if (text === undefined || text === '') return DEFAULT_PORT;
  const port = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (!(port >= 1 && port <= 65_535)) throw new CommandError(say.badPort(text));
  return port;
}

async function printSample(shell: Shell): Promise<void> {
  const folder = join(shell.home, 'sample-data');
  if (!existsSync(join(folder, 'campus-review.json'))) throw new CommandError(say.sampleMissing(folder));
  const { document, files } = await openNotebook(folder, 'campus-review.json');
  const session = new Session(shell.catalogue, shell);
  session.open(document, files);
  await session.calculate();
  shell.out(say.raisedHead(document.title, document.as_of));
  for (const { name, kind, phase, message, description } of session.states()) {
    if (kind !== 'raise') continue;
    const raised = session.result(name)?.tables.raised;
    if (phase !== 'done' || !raised) shell.err(say.cellFailed(name, message));
    else for (const line of [description?.answer ?? '', '', ...raisedLines(raised, shell.width)]) shell.out(line);
  }
}
