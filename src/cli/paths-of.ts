import { readdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import * as say from '../../shared/messages/command.ts';
import { findTableKind, type TableKind } from '../../shared/readings/find-table-kind.ts';
import { CommandError } from './command-error.ts';
import { codeOf, fileSource } from './file-source.ts';

export interface PathsFound {
  readonly paths: readonly string[];
  /** A sentence for each file of a folder that is not read. */
  readonly leftOut: readonly string[];
}

/**
 * Files as given, and in the place of each folder the tables in it that are `wanted`, by name. Folders within a folder and
 * hidden files are not looked at. @throws CommandError for a folder without any such table
 */
export async function pathsOf(
  folder: string,
  given: readonly string[],
  wanted: (kind: TableKind) => boolean,
): Promise<PathsFound> {
  const paths: string[] = [];
  const leftOut: string[] = [];
  for (const path of given) {
    if (!(await isFolder(resolve(folder, path)))) {
      paths.push(path);
      continue;
    }
    const found = await tablesIn(folder, path, wanted, leftOut);
    if (found.length === 0) throw new CommandError(say.folderWithoutTables(path));
    paths.push(...found);
  }
  return { paths, leftOut };
}

async function tablesIn(
  folder: string,
  given: string,
  wanted: (kind: TableKind) => boolean,
  leftOut: string[],
): Promise<string[]> {
  const tables: string[] = [];
  for (const name of await filesIn(resolve(folder, given), given)) {
    const path = join(given, name);
    try {
      const { kind, plan } = await findTableKind(await fileSource(folder, path), []);
      if (plan.status === 'error') leftOut.push(say.leftOutOfFolder(path, plan.message));
      else if (wanted(kind)) tables.push(path);
      else leftOut.push(say.otherKindInFolder(path, kind));
    } catch (cause) {
      if (!(cause instanceof CommandError)) throw cause;
      leftOut.push(say.leftOutOfFolder(path, cause.message));
    }
  }
  return tables;
}

async function filesIn(path: string, given: string): Promise<string[]> {
  try {
    const entries = await readdir(path, { withFileTypes: true });
    const names = entries
      .filter((entry) => !entry.isDirectory() && !entry.name.startsWith('.'))
      .map(({ name }) => name);
    return names.sort((a, b) => (a < b ? -1 : 1));
  } catch (cause) {
    throw new CommandError(say.fileUnreadable(given, codeOf(cause)));
  }
}

async function isFolder(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch {
    // A missing file is told where it is opened.
    return false;
  }
}
