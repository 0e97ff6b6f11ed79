import type { SourceFile, SourceKey } from '../../shared/cell.ts';
import * as say from '../../shared/messages/command.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import { remedyByCommand } from '../../shared/outcome.ts';
import { DATE_ORDER_NAMES } from '../../shared/readings/date-order.ts';
import type { TableKind } from '../../shared/readings/find-table-kind.ts';
import { readProfile } from '../../shared/readings/profile.ts';
import { proposalLines, propose } from '../../shared/readings/propose.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { NOTEBOOK_FORMAT, NOTEBOOK_VERSION, type NotebookDocument } from '../notebook/document.ts';
import { Session } from '../notebook/session.ts';
import { CommandError } from './command-error.ts';
import { fileSources } from './file-source.ts';
import { pathsOf } from './paths-of.ts';
import { readFlags } from './read-flags.ts';
import { readProfileFile } from './read-profile-file.ts';
import type { Shell } from './shell.ts';

const FLAGS = {
  profile: 'files',
  'date-order': 'value',
  'single-reading': 'value',
  revised: 'value',
  accept: 'files',
} as const;
const SHOWN_SET_ASIDE = 20;

/** Says what the import would read, set aside and ask; writes nothing. */
export async function check(given: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('check', given, FLAGS);
  if (flags.plain.length === 0) throw new CommandError(say.missingFiles('check', usageLine('check')));
  const dateOrder = flags.choice('date-order', DATE_ORDER_NAMES);
  const singleReading = flags.choice('single-reading', ['as_found', 'as_left']);
  const revised = flags.choice('revised', ['keep_last', 'keep_both']);
  const profiles = await Promise.all(flags.files('profile').map((file) => readProfileFile(shell.folder, file)));
  const { paths, leftOut } = await pathsOf(shell.folder, flags.plain, () => true);
  const files = await fileSources(shell.folder, paths);
  for (const line of leftOut) shell.out(line);
  const kinds = await tellProposals(files, profiles, shell);
  const session = new Session(shell.catalogue, shell);
  const common = { ...(dateOrder && { dateOrder }), ...(profiles.length > 0 && { profiles }) };
  const accept = flags.files('accept');
  const ofReadings = accept.filter((one) => !/^events(?:$|:)/.test(one));
  const own = {
    ...(singleReading && { singleReading }),
    ...(revised && { revised }),
    ...(ofReadings.length > 0 && { accept: ofReadings }),
  };
  session.open(importOnly(shell.today(), kinds, common, own), files);
  await session.calculate();
  return tell(session, shell);
}

/** What each column of each file is taken for, how sure, and why. Returns the keys of the files by what they are. */
async function tellProposals(
  files: ReadonlyMap<SourceKey, SourceFile>,
  given: readonly unknown[],
  shell: Shell,
): Promise<ReadonlyMap<TableKind, SourceKey[]>> {
  const profiles = given.map(readProfile).flatMap((profile) => (profile.status === 'value' ? profile.value : []));
  const kinds = new Map<TableKind, SourceKey[]>();
  for (const [key, file] of files)
    for (const proposal of await propose([file], profiles)) {
      if (proposal.plan) for (const line of proposalLines(proposal)) shell.out(line);
      kinds.set(proposal.kind, [...(kinds.get(proposal.kind) ?? []), key]);
    }
  return kinds;
}

/** A notebook of the importing cells alone; a register among the files is used for the others. */
function importOnly(
  asOf: string,
  kinds: ReadonlyMap<TableKind, readonly SourceKey[]>,
  common: Readonly<Record<string, unknown>>,
  ofReadings: Readonly<Record<string, unknown>>,
): NotebookDocument {
  const register = kinds.has('register') ? 'register' : '';
  const cells = (['register', 'events', 'readings', 'fuel-use'] as const).flatMap((kind) => {
    const files = kinds.get(kind);
    if (!files) return [];
    const parameters = { files, ...common, ...(kind !== 'register' && { register }) };
    return [{ name: kind, kind, parameters: kind === 'readings' ? { ...parameters, ...ofReadings } : parameters }];
  });
  return {
    format: NOTEBOOK_FORMAT,
    version: NOTEBOOK_VERSION,
    title: 'Check of an import',
    as_of: asOf,
    settings: {},
    data: [],
    cells,
  };
}

function tell(session: Session, shell: Shell): number {
  for (const state of session.states()) {
    if (state.question)
      throw new CommandError(say.question('check', state.question.message, remedyByCommand(state.question)));
    if (state.phase === 'failed') throw new CommandError(state.message);
  }
  for (const state of session.states()) {
    const { account, 'set-aside': setAside } = session.result(state.name)?.tables ?? {};
    if (account) tellAccount(account, shell);
    else if (state.description) shell.out(`${state.name}: ${state.description.answer}`);
    if (setAside) tellSetAside(setAside, shell);
    const { proposals } = session.result(state.name)?.tables ?? {};
    if (proposals) tellNamings(proposals, shell);
    for (const { text, byCommand } of state.description?.remarks ?? [])
      shell.out(byCommand === undefined ? text : `${text} ${byCommand}`);
  }
  shell.out(say.nothingWritten());
  return 0;
}

function tellAccount(account: Table, shell: Shell): void {
  const file = textsOf(account, 'file');
  const count = (column: string, row: number): number => numbersOf(account, column)[row];
  for (let row = 0; row < account.rows; row++)
    shell.out(
      say.fileAccount(
        textAt(file, row),
        count('rows_read', row),
        count('accepted', row),
        count('set_aside', row),
        count('duplicates', row),
      ),
    );
}

function tellSetAside(setAside: Table, shell: Shell): void {
  const [file, reason] = [textsOf(setAside, 'source_file'), textsOf(setAside, 'reason')];
  const line = numbersOf(setAside, 'source_line');
  for (let row = 0; row < Math.min(setAside.rows, SHOWN_SET_ASIDE); row++)
    shell.out(say.setAsideLine(textAt(file, row), String(line[row]), textAt(reason, row)));
  if (setAside.rows > SHOWN_SET_ASIDE) shell.out(say.moreSetAside(setAside.rows - SHOWN_SET_ASIDE));
}

/** What evidence says where the files do not, a line a unit. */
function tellNamings(proposals: Table, shell: Shell): void {
  const text = (column: string, row: number): string => textAt(textsOf(proposals, column), row);
  const readings = numbersOf(proposals, 'readings');
  for (let row = 0; row < Math.min(proposals.rows, SHOWN_SET_ASIDE); row++) {
    const words = text('accepted', row) === 'yes' ? say.acceptedNaming : say.openNaming;
    shell.out(words(text('kind', row), text('unit', row), readings[row], text('would_be', row), text('evidence', row)));
  }
  if (proposals.rows > SHOWN_SET_ASIDE) shell.out(say.moreNamings(proposals.rows - SHOWN_SET_ASIDE));
}
