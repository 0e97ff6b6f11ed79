import { airPairs, tableOfAir } from '../../shared/foresight/compare-air.ts';
import { tableOfDrift, tableOfPath, tableOfPoints } from '../../shared/foresight/drift-tables.ts';
import type { FittedDrift } from '../../shared/foresight/fitted-drift.ts';
import type { DriftRow } from '../../shared/foresight/judge-drift.ts';
import type { Table } from '../../shared/table/table.ts';

interface Judged {
  readonly rows: readonly DriftRow[];
  /** The lanes in the air that the fit is not made in; none where that changes no reading. */
  readonly others: readonly DriftRow[];
  readonly derived: Table;
}

interface DriftTables {
  readonly drift: Table;
  readonly points: Table;
  readonly path: Table;
  readonly air: Table;
}

/** The last tables of a fit: a changed band moves neither a point nor a path. */
const lastOf = new WeakMap<FittedDrift, Judged & DriftTables>();

/** The verdicts, the readings of every judged lane, its level through the years, and what the other air would make of it. */
export async function historyTables(
  judged: Judged,
  fitted: FittedDrift,
  pause: () => Promise<void>,
): Promise<DriftTables> {
  const { rows, others, derived } = judged;
  const last = lastOf.get(fitted);
  const samePoints = last?.derived === derived && agree(rows, last.rows, isSameLane);
  const points = last && samePoints ? last.points : tableOfPoints(rows, fitted, derived);
  await pause();
  const path = last && samePoints && agree(rows, last.rows, isSamePath) ? last.path : tableOfPath(rows, fitted);
  await pause();
  const sameRows = samePoints && agree(rows, last.rows, isSameVerdict);
  const drift = last && sameRows ? last.drift : tableOfDrift(rows, fitted, derived);
  await pause();
  const sameAir = sameRows && agree(others, last.others, isSameVerdict);
  const air = last && sameAir ? last.air : tableOfAir(airPairs(rows, others, fitted.referenceAir));
  const tables = { drift, points, path, air };
  lastOf.set(fitted, { ...judged, ...tables });
  return tables;
}

function agree(
  now: readonly DriftRow[],
  before: readonly DriftRow[],
  test: (now: DriftRow, before: DriftRow) => boolean,
): boolean {
  return now.length === before.length && now.every((row, place) => test(row, before[place]));
}

const isSameLane = (now: DriftRow, before: DriftRow): boolean =>
  now === before ||
  (now.lane === before.lane &&
    now.unit === before.unit &&
    now.fuel === before.fuel &&
    now.fire === before.fire &&
    now.band.quantity === before.band.quantity);

const isSamePath = (now: DriftRow, before: DriftRow): boolean =>
  now === before ||
  (now.horizon === before.horizon &&
    Number.isFinite(now.judged.levelNow) === Number.isFinite(before.judged.levelNow) &&
    Object.is(now.state.rate, before.state.rate));

/** Lanes that nobody has read are made anew each time; there is nothing to them but their band. */
function isSameVerdict(now: DriftRow, before: DriftRow): boolean {
  if (now === before) return true;
  if (now.lane >= 0 || now.horizon !== before.horizon || now.judged.reason !== before.judged.reason) return false;
  const [a, b] = [now.band, before.band];
  return (
    a.source === b.source &&
    [a.target, a.lower, a.upper, a.settingLower, a.settingUpper].every((value, side) =>
      Object.is(value, [b.target, b.lower, b.upper, b.settingLower, b.settingUpper][side]),
    )
  );
}
