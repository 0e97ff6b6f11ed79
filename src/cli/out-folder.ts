import { rmdirSync, rmSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rename, rm, rmdir, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import * as say from '../../shared/messages/command.ts';
import type { WrittenText } from '../notebook/written-files.ts';
import { CommandError } from './command-error.ts';
import { codeOf } from './file-source.ts';
import { onStop } from './on-stop.ts';
import { writePieces } from './write-pieces.ts';

/** A file to be written, or one whose text lies in `early` already. */
export interface StagedText extends Pick<WrittenText, 'name' | 'pieces'> {
  readonly written?: { readonly path: string; readonly done: Promise<void> };
}

/**
 * A folder that is written whole or not at all: everything goes into a hidden folder inside it, and moves into place only
 * when the last byte is on disk. What the folder held before stays unless a new file has its name.
 */
export class OutFolder {
  readonly #given: string;
  readonly #path: string;
  readonly #staging: string;
  /** The outermost folder that had to be made, to be removed again when nothing is written. */
  readonly #made: string | undefined;
  /** Whoever stops the command meanwhile finds everything as it was, too. */
  readonly #finished: () => void;

  private constructor(given: string, path: string, staging: string, made: string | undefined) {
    this.#given = given;
    this.#path = path;
    this.#staging = staging;
    this.#made = made;
    this.#finished = onStop(() => discardAtOnce(staging, path, made));
  }

  /** Makes sure, before anything is calculated, that the folder can be written. */
  static async prepare(folder: string, given: string): Promise<OutFolder> {
    const path = resolve(folder, given);
    let made: string | undefined;
    try {
      if ((await kindOf(path)) === 'file') throw new CommandError(say.outIsFile(given));
      made = await makeFolders(path);
      return new OutFolder(given, path, await mkdtemp(join(path, '.unfinished-')), made);
    } catch (cause) {
      if (made) await removeEmpty(path, made);
      if (cause instanceof CommandError) throw cause;
      throw new CommandError(say.outUnwritable(given, codeOf(cause)));
    }
  }

  /** @returns the names written */
  async write(files: readonly StagedText[]): Promise<readonly string[]> {
    try {
      for (const file of files) {
        if ((await kindOf(join(this.#path, file.name))) === 'folder')
          throw new CommandError(
            say.outUnwritable(join(this.#given, file.name), 'a folder of that name is in the way'),
          );
        await this.#stage(file);
      }
      for (const { name } of files) await rename(join(this.#staging, name), join(this.#path, name));
      await rm(this.#staging, { recursive: true, force: true });
      this.#finished();
    } catch (cause) {
      await this.discard();
      throw cause instanceof CommandError ? cause : new CommandError(say.outUnwritable(this.#given, codeOf(cause)));
    }
    return files.map(({ name }) => name);
  }

  /** A place for a file that is written before the others. The name is the caller's; no file of a cell can have it. */
  early(name: string): string {
    return join(this.#staging, `.early-${name}`);
  }

  async #stage({ name, pieces, written }: StagedText): Promise<void> {
    const place = join(this.#staging, name);
    if (!written) return writePieces(place, pieces());
    await written.done;
    await rename(written.path, place);
  }

  /** Leaves everything as it was found. */
  async discard(): Promise<void> {
    await rm(this.#staging, { recursive: true, force: true });
    if (this.#made) await removeEmpty(this.#path, this.#made);
    this.#finished();
  }
}

/** The same without waiting, for a process that is about to end. */
function discardAtOnce(staging: string, path: string, made: string | undefined): void {
  rmSync(staging, { recursive: true, force: true, maxRetries: 3 });
  if (made === undefined) return;
  try {
    for (let empty = path; empty.length >= made.length; empty = dirname(empty)) rmdirSync(empty);
  } catch {
    // Something else lies in it by now, and stays.
  }
}

async function kindOf(path: string): Promise<'file' | 'folder' | 'nothing'> {
  try {
    return (await stat(path)).isDirectory() ? 'folder' : 'file';
  } catch (cause) {
    const code = codeOf(cause);
    if (code === 'ENOENT') return 'nothing';
    throw cause;
  }
}

/**
 * Makes the folder and those above it one by one, and returns the outermost that had to be made. (Node's own recursive
 * form never returns below /proc, where a folder is missing and yet cannot be made.)
 */
async function makeFolders(path: string): Promise<string | undefined> {
  const missing: string[] = [];
  for (let above = path; (await kindOf(above)) === 'nothing'; above = dirname(above)) {
    missing.push(above);
    if (dirname(above) === above) break;
  }
  let made: string | undefined;
  try {
    for (const folder of missing.reverse()) {
      await mkdir(folder);
      made ??= folder;
    }
  } catch (cause) {
    if (made) await removeEmpty(path, made);
    throw cause;
  }
  return made;
}

/** Removes the folders from the innermost out to `outermost`, as far as they are empty. */
async function removeEmpty(innermost: string, outermost: string): Promise<void> {
  for (let path = innermost; path.length >= outermost.length; path = dirname(path)) {
    try {
      if ((await readdir(path)).length > 0) return;
      await rmdir(path);
    } catch (cause) {
      // The inner ones may never have been made.
      if (codeOf(cause) !== 'ENOENT') return;
    }
  }
}
