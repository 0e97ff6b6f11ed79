import type { BandSource } from '../../shared/foresight/band-of-lane.ts';
import type { DriftRow } from '../../shared/foresight/judge-drift.ts';
import { countRegistered } from '../../shared/readings/count-registered.ts';
import type { Table } from '../../shared/table/table.ts';

/** Judged lanes in numbers, for answer and remarks. */
export interface ToldLanes {
  readonly lanes: number;
  /** Their units that the register has, and those that it lacks. */
  readonly registered: number;
  readonly strangers: number;
  readonly outside: number;
  readonly leaving: number;
  /** Without a chance. */
  readonly chanceless: number;
  /** Without a verdict, and why the first of them has none. */
  readonly unjudged: number;
  readonly firstReason: string;
  readonly bandsFrom: Readonly<Partial<Record<BandSource, number>>>;
}

export function tellLanes(rows: readonly DriftRow[], units: Table | undefined): ToldLanes {
  const count = (test: (row: DriftRow) => boolean): number => rows.filter(test).length;
  const bandsFrom: Partial<Record<BandSource, number>> = {};
  for (const { band } of rows) bandsFrom[band.source] = (bandsFrom[band.source] ?? 0) + 1;
  return {
    lanes: rows.length,
    ...countRegistered(
      rows.map(({ unit }) => unit),
      units,
    ),
    outside: count(({ judged }) => judged.marginNow < 0),
    leaving: count(({ judged }) => judged.marginNow >= 0 && judged.outBy >= 0.5),
    chanceless: count(({ judged }) => !Number.isFinite(judged.outBy)),
    unjudged: count(({ judged }) => judged.reason !== ''),
    firstReason: rows.find(({ judged }) => judged.reason !== '')?.judged.reason ?? '',
    bandsFrom,
  };
}
