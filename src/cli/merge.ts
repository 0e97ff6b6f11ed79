import { rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import * as command from '../../shared/messages/command.ts';
import * as say from '../../shared/messages/merge.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import type { NotebookDocument } from '../notebook/document.ts';
import type { Conflict, Resolve } from '../notebook/merge/conflict.ts';
import { conflictLine } from '../notebook/merge/conflict-line.ts';
import { mergeDocuments } from '../notebook/merge/merge-documents.ts';
import { readDocument } from '../notebook/read-document.ts';
import { writeDocument } from '../notebook/write-document.ts';
import { CommandError } from './command-error.ts';
import { codeOf, fileText } from './file-source.ts';
import { readFlags } from './read-flags.ts';
import type { Shell } from './shell.ts';

const FLAGS = { out: 'value', keep: 'value' } as const;

/** Makes several notebooks of one fleet one. Where they contradict each other, the user is asked and nothing is written. */
export async function merge(given: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('merge', given, FLAGS);
  const target = flags.value('out');
  if (flags.plain.length < 2) throw new CommandError(say.twoNeeded(flags.plain.length));
  if (target === undefined) throw new CommandError(command.missingFlag('merge', 'out', usageLine('merge')));
  const keep = flags.choice('keep', ['first', 'second']);
  const [first, ...others] = await Promise.all(flags.plain.map((path) => read(shell.folder, path)));
  let document = first;
  const left: Conflict[] = [];
  for (const other of others) {
    const resolved: Resolve = () => keep;
    const merged = mergeDocuments(document, other, resolved);
    if (merged.status !== 'value') throw new CommandError(merged.status === 'error' ? merged.message : '');
    document = merged.value.document;
    left.push(...merged.value.conflicts);
  }
  if (left.length > 0) {
    const lines = left.map(conflictLine);
    for (const line of lines) shell.out(line);
    throw new CommandError(say.conflictsLeft(left.length, lines[0]));
  }
  await writeWhole(shell.folder, target, writeDocument(document));
  shell.out(say.merged(flags.plain.length, document.cells.length, countCorrections(document), target));
  return 0;
}

async function read(folder: string, path: string): Promise<NotebookDocument> {
  const document = readDocument(path, await fileText(folder, path));
  if (document.status === 'value') return document.value;
  throw new CommandError(document.status === 'error' ? document.message : document.question.message);
}

/** A file that is there whole or not at all. */
async function writeWhole(folder: string, given: string, text: string): Promise<void> {
  const path = resolve(folder, given);
  const unfinished = join(dirname(path), `.unfinished-${process.pid}-${basename(path)}`);
  try {
    await writeFile(unfinished, text, { flag: 'wx' });
    await rename(unfinished, path);
  } catch (cause) {
    await rm(unfinished, { force: true });
    throw new CommandError(command.outUnwritable(given, codeOf(cause)));
  }
}

function countCorrections({ cells }: NotebookDocument): number {
  return cells.reduce((sum, { parameters }) => {
    const { corrections } = parameters;
    return sum + (Array.isArray(corrections) ? corrections.length : 0);
  }, 0);
}
