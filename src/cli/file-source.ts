import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { access, constants, readFile, stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import type { SourceFile, SourceKey } from '../../shared/cell.ts';
import * as say from '../../shared/messages/command.ts';
import { CommandError } from './command-error.ts';

const CHUNK_BYTES = 256 * 1024;
/** Notebooks and profiles are read whole; data files are streamed and have no such limit. */
const MOST_TEXT_BYTES = 64_000_000;

/** A data file on disk, checked and hashed. @throws CommandError naming the path as the user gave it */
export async function fileSource(folder: string, given: string): Promise<SourceFile> {
  const path = resolve(folder, given);
  const size = await fileSize(path, given);
  const open = (): AsyncIterable<Uint8Array> => createReadStream(path, { highWaterMark: CHUNK_BYTES });
  try {
    return { name: basename(path), size, hash: await hashOf(open()), open };
  } catch (cause) {
    throw new CommandError(say.fileUnreadable(given, codeOf(cause)));
  }
}

/** Files under keys of their own: the file name, or what the user typed where two have the same name. */
export async function fileSources(folder: string, given: readonly string[]): Promise<Map<SourceKey, SourceFile>> {
  const sources = new Map<SourceKey, SourceFile>();
  for (const path of given) {
    const source = await fileSource(folder, path);
    let key = sources.has(source.name) ? path : source.name;
    for (let copy = 2; sources.has(key); copy++) key = `${path} (${copy})`;
    sources.set(key, key === source.name ? source : { ...source, name: key });
  }
  return sources;
}

/** A text file, whole. */
export async function fileText(folder: string, given: string): Promise<string> {
  const path = resolve(folder, given);
  const size = await fileSize(path, given);
  if (size > MOST_TEXT_BYTES) throw new CommandError(say.fileTooLong(given, Math.round(size / 1e6)));
  try {
    return await readFile(path, 'utf8');
  } catch (cause) {
    throw new CommandError(say.fileUnreadable(given, codeOf(cause)));
  }
}

/** SHA-256, lower-case hexadecimal; the machine's own is many times faster than one in JavaScript. */
async function hashOf(pieces: AsyncIterable<Uint8Array>): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of pieces) hash.update(piece);
  return hash.digest('hex');
}

async function fileSize(path: string, given: string): Promise<number> {
  try {
    const found = await stat(path);
    if (found.isDirectory()) throw new CommandError(say.fileIsFolder(given));
    if (!found.isFile()) throw new CommandError(say.fileUnreadable(given, 'no plain file'));
    await access(path, constants.R_OK);
    if (found.size === 0) throw new CommandError(say.fileEmpty(given));
    return found.size;
  } catch (cause) {
    if (cause instanceof CommandError) throw cause;
    const code = codeOf(cause);
    throw new CommandError(
      code === 'ENOENT' || code === 'ENOTDIR' ? say.fileMissing(given) : say.fileUnreadable(given, code),
    );
  }
}

export function codeOf(cause: unknown): string {
  return (cause as NodeJS.ErrnoException)?.code ?? (cause instanceof Error ? cause.message : String(cause));
}
