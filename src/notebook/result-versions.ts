import type { CellResult } from '../../shared/cell.ts';
import { fingerprint } from '../engine/fingerprint.ts';
import type { Versions } from '../engine/node.ts';

/** A result has one version a table, by content, and one for the whole. */
export function resultVersions(result: CellResult): Versions {
  const { tables, ...rest } = result;
  const parts = new Map(Object.entries(tables).map(([name, table]) => [name, fingerprint(table)]));
  return { whole: fingerprint([[...parts], rest]), parts };
}

/** The result reduced to the tables that a reader named. */
export function onlyTables({ tables }: CellResult, names: readonly string[]): CellResult {
  return { tables: Object.fromEntries(names.filter((name) => name in tables).map((name) => [name, tables[name]])) };
}
