import type { SourceFile, SourceKey } from '../../shared/cell.ts';
import * as say from '../../shared/messages/command.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import { DATE_ORDER_NAMES } from '../../shared/readings/date-order.ts';
import { campusReview } from '../notebook/campus-review.ts';
import { Session } from '../notebook/session.ts';
import { CommandError } from './command-error.ts';
import { fileSources } from './file-source.ts';
import { finish, TIERS } from './finish.ts';
import { OutFolder } from './out-folder.ts';
import { pathsOf } from './paths-of.ts';
import { type Flags, readFlags } from './read-flags.ts';
import { readProfileFile } from './read-profile-file.ts';
import type { Shell } from './shell.ts';

const FLAGS = {
  readings: 'files',
  register: 'value',
  out: 'value',
  events: 'value',
  'fuel-use': 'value',
  'as-of': 'value',
  horizon: 'value',
  fuel: 'value',
  profile: 'files',
  'date-order': 'value',
  'single-reading': 'value',
  revised: 'value',
  accept: 'files',
  suspects: 'value',
  'fail-on': 'value',
} as const;

/** Ten years, the longest horizon that anything is said about. */
const LONGEST_HORIZON_DAYS = 3653;

/** Builds the campus review over the given files, calculates it and writes every result. */
export async function review(words: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('review', words, FLAGS);
  if (flags.plain.length > 0) throw new CommandError(say.strayArgument('review', flags.plain[0]));
  for (const needed of ['readings', 'out'])
    if (flags.files(needed).length === 0)
      throw new CommandError(say.missingFlag('review', needed, usageLine('review')));
  const settings = readSettings(flags, shell);
  const failOn = flags.choice('fail-on', TIERS);
  const given = await Promise.all(flags.files('profile').map((file) => readProfileFile(shell.folder, file)));
  const profiles = given.length === 0 ? {} : { profiles: given };
  const { files, keys, leftOut } = await openFiles(flags, shell.folder);
  for (const line of leftOut) shell.out(line);
  const out = await OutFolder.prepare(shell.folder, flags.value('out') as string);
  const session = new Session(shell.catalogue, shell);
  const data = [...files].map(([key, { name, size, hash }]) => ({ key, name, size, hash }));
  session.open(campusReview({ title: 'Campus review', data, ...keys, ...settings, ...profiles }), files);
  return finish(session, out, { failOn, refuseFaults: true }, shell);
}

function readSettings(flags: Flags, shell: Shell): Pick<Parameters<typeof campusReview>[0], 'asOf'> & object {
  const horizonDays = flags.number('horizon', 1, LONGEST_HORIZON_DAYS);
  const fuel = flags.value('fuel');
  const dateOrder = flags.choice('date-order', DATE_ORDER_NAMES);
  const singleReading = flags.choice('single-reading', ['as_found', 'as_left']);
  const revised = flags.choice('revised', ['keep_last', 'keep_both']);
  const suspects = flags.choice('suspects', ['in', 'out']);
  return {
    asOf: flags.day('as-of') ?? shell.today(),
    ...(horizonDays !== undefined && { horizonDays }),
    ...(fuel !== undefined && { fuel }),
    ...(dateOrder !== undefined && { dateOrder }),
    ...(singleReading !== undefined && { singleReading }),
    ...(revised !== undefined && { revised }),
    ...(suspects !== undefined && { suspects }),
    ...(flags.files('accept').length > 0 && { accept: flags.files('accept') }),
  };
}

type Part = 'readings' | 'register' | 'events' | 'fuelUse';
const PARTS: readonly (readonly [Part, keyof typeof FLAGS])[] = [
  ['readings', 'readings'],
  ['register', 'register'],
  ['events', 'events'],
  ['fuelUse', 'fuel-use'],
];

async function openFiles(
  flags: Flags,
  folder: string,
): Promise<{
  files: ReadonlyMap<SourceKey, SourceFile>;
  keys: Record<Part, SourceKey[]>;
  leftOut: readonly string[];
}> {
  const { paths, leftOut } = await pathsOf(folder, flags.files('readings'), (kind) => kind === 'readings');
  const of = (flag: keyof typeof FLAGS): readonly string[] => (flag === 'readings' ? paths : flags.files(flag));
  const files = await fileSources(
    folder,
    PARTS.flatMap(([, flag]) => of(flag)),
  );
  const inOrder = [...files.keys()];
  const keys = { readings: [], register: [], events: [], fuelUse: [] } as Record<Part, SourceKey[]>;
  for (const [part, flag] of PARTS) keys[part] = inOrder.splice(0, of(flag).length);
  return { files, keys, leftOut };
}
