import { tableOfPath, tableOfPoints } from '../../shared/foresight/drift-tables.ts';
import type { FittedDrift } from '../../shared/foresight/fitted-drift.ts';
import type { DriftRow } from '../../shared/foresight/judge-drift.ts';
import type { Table } from '../../shared/table/table.ts';

interface History {
  readonly points: Table;
  readonly path: Table;
}

/** The last history of a fit: a changed band moves neither a point nor a path. */
const lastOf = new WeakMap<FittedDrift, History & { readonly rows: readonly DriftRow[]; readonly derived: Table }>();

/** The readings of every judged lane, and its level through the years. */
export async function historyTables(
  rows: readonly DriftRow[],
  fitted: FittedDrift,
  derived: Table,
  pause: () => Promise<void>,
): Promise<History> {
  const last = lastOf.get(fitted);
  const isSameOf = (test: (now: DriftRow, before: DriftRow) => boolean): boolean =>
    last !== undefined && rows.length === last.rows.length && rows.every((row, place) => test(row, last.rows[place]));
  const samePoints = last?.derived === derived && isSameOf(isSameLane);
  const points = samePoints && last ? last.points : tableOfPoints(rows, fitted, derived);
  await pause();
  const path = samePoints && last && isSameOf(isSamePath) ? last.path : tableOfPath(rows, fitted);
  lastOf.set(fitted, { rows, derived, points, path });
  return { points, path };
}

const isSameLane = (now: DriftRow, before: DriftRow): boolean =>
  now.lane === before.lane &&
  now.unit === before.unit &&
  now.fuel === before.fuel &&
  now.fire === before.fire &&
  now.band.quantity === before.band.quantity;

const isSamePath = (now: DriftRow, before: DriftRow): boolean =>
  now.horizon === before.horizon &&
  Number.isFinite(now.judged.levelNow) === Number.isFinite(before.judged.levelNow) &&
  Object.is(now.state.rate, before.state.rate);
