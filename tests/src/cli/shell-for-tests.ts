import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CellKind } from '../../../shared/cell.ts';
import { runCommand } from '../../../src/cli/run-command.ts';
import type { Scribe } from '../../../src/cli/table-scribe.ts';

/** What a command said and left behind. */
export interface Ran {
  readonly code: number;
  readonly out: readonly string[];
  readonly err: readonly string[];
}

/** A folder of its own that is removed again, and commands typed in it. */
export class Desk {
  readonly folder = mkdtempSync(join(tmpdir(), 'between-visits-'));
  readonly #catalogue: ReadonlyMap<string, CellKind>;
  readonly #scribe: Scribe | undefined;

  constructor(catalogue: ReadonlyMap<string, CellKind>, scribe?: Scribe) {
    this.#catalogue = catalogue;
    this.#scribe = scribe;
  }

  async type(...words: readonly string[]): Promise<Ran> {
    const out: string[] = [];
    const err: string[] = [];
    const code = await runCommand(words, {
      catalogue: this.#catalogue,
      scribe: this.#scribe && (() => this.#scribe as Scribe),
      folder: this.folder,
      home: join(import.meta.dirname, '../../..'),
      width: 80,
      environment: {},
      today: () => '2026-03-31',
      out: (line) => out.push(line),
      err: (line) => err.push(line),
    });
    return { code, out, err };
  }

  /** Every file and folder below, by path. */
  contents(): string[] {
    return readdirSync(this.folder, { recursive: true, encoding: 'utf8' }).sort();
  }

  clear(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
