import { compareRaised } from '../../shared/limits/compare-raised.ts';
import * as command from '../../shared/messages/command.ts';
import * as say from '../../shared/messages/merge.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import type { Table } from '../../shared/table/table.ts';
import { compareDocuments } from '../notebook/compare/compare-documents.ts';
import type { NotebookDocument } from '../notebook/document.ts';
import { Session } from '../notebook/session.ts';
import { openNotebook } from './calculate.ts';
import { CommandError } from './command-error.ts';
import { readFlags } from './read-flags.ts';
import type { Shell } from './shell.ts';

const FLAGS = { from: 'value', to: 'value' } as const;

/** Says what was decided otherwise and which units that raises or clears, between two notebooks or two days of one. */
export async function compare(given: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('compare', given, FLAGS);
  const [from, to] = [flags.day('from'), flags.day('to')];
  const [first, second = first, ...more] = flags.plain;
  if (first === undefined || more.length > 0)
    throw new CommandError(command.missingFiles('compare', usageLine('compare')));
  if (flags.plain.length === 1 && (from === undefined || to === undefined)) throw new CommandError(say.compareOne());
  const before = await calculated(first, from, shell);
  const after = await calculated(second, to, shell);
  const decided = compareDocuments(before.document, after.document);
  for (const line of decided.length > 0 ? decided : [say.nothingDiffers()]) shell.out(line);
  for (const line of compareRaised(before.raised, after.raised)) shell.out(line);
  return 0;
}

async function calculated(
  path: string,
  asOf: string | undefined,
  shell: Shell,
): Promise<{ document: NotebookDocument; raised: Table }> {
  const { document: saved, files } = await openNotebook(shell.folder, path);
  const document = asOf === undefined ? saved : { ...saved, as_of: asOf };
  const session = new Session(shell.catalogue, shell);
  session.open(document, files);
  await session.calculate();
  const raising = session.states().find(({ kind, phase }) => kind === 'raise' && phase === 'done');
  const raised = raising && session.result(raising.name)?.tables.raised;
  if (!raised) throw new CommandError(say.notRaised(path));
  return { document, raised };
}
