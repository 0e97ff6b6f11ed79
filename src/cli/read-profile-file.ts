import * as say from '../../shared/messages/command.ts';
import { CommandError } from './command-error.ts';
import { fileText } from './file-source.ts';

/** A mapping profile as its file holds it; whether it is one, the readings cell decides. */
export async function readProfileFile(folder: string, given: string): Promise<unknown> {
  const text = await fileText(folder, given);
  try {
    return JSON.parse(text) as unknown;
  } catch (cause) {
    throw new CommandError(say.fileNotJson(given, cause instanceof Error ? cause.message : String(cause)));
  }
}
