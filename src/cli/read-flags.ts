import * as say from '../../shared/messages/command.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { CommandError } from './command-error.ts';

/** 'files' takes any number of values, 'value' exactly one. */
export type FlagKinds = Readonly<Record<string, 'files' | 'value'>>;

export interface Flags {
  /** Words that stand before any flag. */
  readonly plain: readonly string[];
  files(flag: string): readonly string[];
  value(flag: string): string | undefined;
  day(flag: string): string | undefined;
  number(flag: string, least: number, most: number): number | undefined;
  choice<Option extends string>(flag: string, options: readonly Option[]): Option | undefined;
}

/** Reads `--flag value`, `--flag=value` and `--flag value value ...`; throws a CommandError for anything else. */
export function readFlags(command: string, given: readonly string[], kinds: FlagKinds): Flags {
  const plain: string[] = [];
  const values = new Map<string, string[]>();
  let open: string | undefined;
  for (const word of given) {
    if (!word.startsWith('--') || word === '--') {
      take(command, kinds, open, open === undefined ? plain : (values.get(open) as string[]), word);
      continue;
    }
    const [, flag, , attached] = /^--([^=]*)(=(.*))?$/su.exec(word) ?? [];
    if (!Object.hasOwn(kinds, flag)) throw new CommandError(say.unknownFlag(command, word, known(kinds)));
    if (values.has(flag) && kinds[flag] === 'value') throw new CommandError(say.flagTwice(command, flag));
    values.set(flag, values.get(flag) ?? []);
    if (attached) take(command, kinds, flag, values.get(flag) as string[], attached);
    open = flag;
  }
  for (const [flag, list] of values) if (list.length === 0) throw new CommandError(say.flagWithoutValue(command, flag));
  return flagsOf(command, plain, values);
}

const known = (kinds: FlagKinds): string =>
  Object.keys(kinds)
    .map((flag) => `--${flag}`)
    .join(', ');

function take(command: string, kinds: FlagKinds, flag: string | undefined, list: string[], word: string): void {
  if (flag !== undefined && kinds[flag] === 'value' && list.length > 0)
    throw new CommandError(say.tooManyValues(command, flag, word));
  if (flag !== undefined && word === '') throw new CommandError(say.flagWithoutValue(command, flag));
  list.push(word);
}

function flagsOf(command: string, plain: readonly string[], values: ReadonlyMap<string, readonly string[]>): Flags {
  const value = (flag: string): string | undefined => values.get(flag)?.[0];
  return {
    plain,
    value,
    files: (flag) => values.get(flag) ?? [],
    day(flag) {
      const text = value(flag);
      if (text !== undefined && (!/^\d{4}-\d{2}-\d{2}$/.test(text) || Number.isNaN(readIsoDate(text))))
        throw new CommandError(say.badDay(command, flag, text));
      return text;
    },
    number(flag, least, most) {
      const text = value(flag);
      if (text === undefined) return undefined;
      const number = /^\d+$/.test(text) ? Number(text) : Number.NaN;
      if (!(number >= least && number <= most)) throw new CommandError(say.badNumber(command, flag, text, least, most));
      return number;
    },
    choice<Option extends string>(flag: string, options: readonly Option[]): Option | undefined {
      const text = value(flag);
      const option = options.find((candidate) => candidate === text);
      if (text !== undefined && option === undefined)
        throw new CommandError(say.badChoice(command, flag, text, options.join(', ')));
      return option;
    },
  };
}
