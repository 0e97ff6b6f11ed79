import { dirname, resolve } from 'node:path';
import type { SourceFile, SourceKey } from '../../shared/cell.ts';
import * as say from '../../shared/messages/command.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import { dataNotices } from '../notebook/data-notices.ts';
import type { NotebookDocument } from '../notebook/document.ts';
import { embeddedFiles } from '../notebook/embedded-files.ts';
import { readDocument } from '../notebook/read-document.ts';
import { Session } from '../notebook/session.ts';
import { CommandError } from './command-error.ts';
import { fileSource, fileText } from './file-source.ts';
import { finish, TIERS } from './finish.ts';
import { OutFolder } from './out-folder.ts';
import { readFlags } from './read-flags.ts';
import type { Shell } from './shell.ts';

const FLAGS = { out: 'value', 'as-of': 'value', 'fail-on': 'value' } as const;

/** Calculates a saved notebook over the data files beside it and writes every result. */
export async function calculate(given: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('calculate', given, FLAGS);
  if (flags.plain.length === 0) throw new CommandError(say.missingFiles('calculate', usageLine('calculate')));
  if (flags.plain.length > 1) throw new CommandError(say.oneNotebook('calculate', flags.plain.length));
  const target = flags.value('out');
  if (target === undefined) throw new CommandError(say.missingFlag('calculate', 'out', usageLine('calculate')));
  const asOf = flags.day('as-of');
  const failOn = flags.choice('fail-on', TIERS);
  const { document, files } = await openNotebook(shell.folder, flags.plain[0]);
  for (const notice of dataNotices(document, files)) shell.err(notice);
  const out = await OutFolder.prepare(shell.folder, target);
  const session = new Session(shell.catalogue, shell);
  session.open(asOf === undefined ? document : { ...document, as_of: asOf }, files);
  return finish(session, out, { failOn, refuseFaults: false }, shell);
}

/** A notebook file with its data, looked for in the notebook's own folder. @throws CommandError */
export async function openNotebook(
  folder: string,
  given: string,
): Promise<{ document: NotebookDocument; files: ReadonlyMap<SourceKey, SourceFile> }> {
  const read = readDocument(given, await fileText(folder, given));
  if (read.status !== 'value') throw new CommandError(read.status === 'error' ? read.message : read.question.message);
  const document = read.value;
  const home = dirname(resolve(folder, given));
  const files = new Map(await embeddedFiles(document));
  for (const { key, name } of document.data) {
    if (files.has(key)) continue;
    const source = await fileSource(home, name).catch((cause: unknown) => {
      if (cause instanceof CommandError && cause.message === say.fileMissing(name))
        throw new CommandError(say.dataMissing(given, name, dirname(given)));
      throw cause;
    });
    // Results name the file as the notebook does, wherever it lies.
    files.set(key, { ...source, name: key });
  }
  return { document, files };
}
