import type { CellKind } from '../../shared/cell.ts';
import type { HelperPool } from '../notebook/crews/helper-pool.ts';
import type { Scribe } from './table-scribe.ts';

/** What a command knows of the world around it. */
export interface Shell {
  readonly catalogue: ReadonlyMap<string, CellKind>;
  /** Threads for heavy cells, where there are any. */
  readonly helpers?: HelperPool | undefined;
  /** A thread that writes large tables, where there is one; started when first asked for. */
  readonly scribe?: (() => Scribe) | undefined;
  /** The folder in which the user typed the command; their paths are meant from there. */
  readonly folder: string;
  /** The project's own folder, with sample-data and dist in it. */
  readonly home: string;
  /** Width of the terminal in characters. */
  readonly width: number;
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** Today's date on the wall, YYYY-MM-DD. */
  today(): string;
  out(line: string): void;
  err(line: string): void;
}

/** A command returns its exit code, or throws a CommandError. */
export type Command = (given: readonly string[], shell: Shell) => Promise<number>;
