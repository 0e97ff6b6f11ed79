import * as say from '../../shared/messages/command.ts';
import { usageHelp, usageOverview } from '../../shared/messages/usage.ts';
import { calculate } from './calculate.ts';
import { check } from './check.ts';
import { CommandError } from './command-error.ts';
import { compare } from './compare.ts';
import { merge } from './merge.ts';
import { origin } from './origin.ts';
import { review } from './review.ts';
import type { Command, Shell } from './shell.ts';
import { start } from './start.ts';
import { working } from './working.ts';

const COMMANDS: Readonly<Record<string, Command>> = {
  start,
  review,
  calculate,
  check,
  merge,
  compare,
  working,
  origin,
};

const HELP: ReadonlySet<string> = new Set(['--help', '-h']);

/** Runs one command and returns its exit code. Whatever goes wrong is one line on stderr, never a stack trace. */
export async function runCommand([name = '', ...given]: readonly string[], shell: Shell): Promise<number> {
  try {
    if (HELP.has(name)) {
      for (const line of usageOverview()) shell.out(line);
      return 0;
    }
    const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
    if (!command) throw new CommandError(say.unknownCommand(name, Object.keys(COMMANDS).join(', ')));
    if (given.some((word) => HELP.has(word))) {
      for (const line of usageHelp(name)) shell.out(line);
      return 0;
    }
    return await command(given, shell);
  } catch (cause) {
    const message =
      cause instanceof CommandError ? cause.message : say.fault(cause instanceof Error ? cause.message : String(cause));
    shell.err(message.replaceAll(/\s*\r?\n\s*/g, ' '));
    if (!(cause instanceof CommandError) && shell.environment.BETWEEN_VISITS_TRACE && cause instanceof Error)
      shell.err(cause.stack ?? '');
    return cause instanceof CommandError ? cause.code : 2;
  }
}
