import type { BandSource } from '../../shared/foresight/band-of-lane.ts';
import type { FittedLane } from '../../shared/foresight/fitted-drift.ts';
import type { DriftRow } from '../../shared/foresight/judge-drift.ts';
import { countRegistered } from '../../shared/readings/count-registered.ts';
import { medianOf } from '../../shared/statistics/median-of.ts';
import type { Table } from '../../shared/table/table.ts';

/** Less is within what the instrument itself leaves open. */
const LEAST_AIR_SD = 0.1;

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
  /** Lanes whose level hangs on an air temperature that nobody read, and the median of what it adds, in points of O2. */
  readonly airless: number;
  readonly airSdO2: number;
  readonly bandsFrom: Readonly<Partial<Record<BandSource, number>>>;
}

export function tellLanes(
  rows: readonly DriftRow[],
  units: Table | undefined,
  lanes: readonly Pick<FittedLane, 'airVariance'>[],
): ToldLanes {
  const count = (test: (row: DriftRow) => boolean): number => rows.filter(test).length;
  const airSds = lanes.map(({ airVariance }) => Math.sqrt(airVariance)).filter((sd) => sd >= LEAST_AIR_SD);
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
    airless: airSds.length,
    airSdO2: medianOf(airSds),
    bandsFrom,
  };
}
