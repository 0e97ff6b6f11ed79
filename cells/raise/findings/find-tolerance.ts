import { cutByExpectedFalse } from '../../../shared/limits/expected-false.ts';
import { probabilityOutside } from '../../../shared/limits/probability-outside.ts';
import { checkTolerance, leavingTolerance, outOfTolerance } from '../../../shared/messages/raise.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import type { RaiseParameters } from '../parameters.ts';
import { type DriftLane, laneReader, type Scope } from './drift-lane.ts';
import type { FleetMonth } from './fleet-months.ts';
import { scopeOf } from './scope.ts';

export interface ToleranceFindings {
  readonly findings: readonly Finding[];
  /** How many of the fires called outside, and of those called leaving, are expected to be found inside. */
  readonly expectedInside: { readonly out: number; readonly leaving: number };
}

/** Fires that are outside their band now, and those likely to leave it by the horizon. */
export function findTolerance(
  fleet: Fleet,
  { leastChance, falseDiscoveryRate }: RaiseParameters,
  skip: (unit: string) => boolean,
  months: readonly FleetMonth[],
): ToleranceFindings {
  const { drift } = fleet;
  if (!drift) return { findings: [], expectedInside: { out: 0, leaving: 0 } };
  const outside = outsideNow(drift, skip);
  const out = cutByExpectedFalse(outside, leastChance, falseDiscoveryRate);
  const isOut = new Set(out.kept);
  // A fire that is not surely enough outside can still be likely enough to leave.
  const chances = numbersOf(drift, 'probability_out_by_horizon').map((chance, row) =>
    Number.isNaN(outside[row]) || isOut.has(row) ? Number.NaN : chance,
  );
  const leaving = cutByExpectedFalse(chances, leastChance, falseDiscoveryRate);
  const laneAt = laneReader(drift);
  const lanes = new Map([...out.kept, ...leaving.kept].map((row) => [row, laneAt(row)]));
  const scope = scopeOf(fleet, [...lanes.values()], months);
  const finding = (row: number, reason: Finding['reason'], rate: number, chance: number): Finding => {
    const lane = lanes.get(row) ?? laneAt(row);
    return toFinding(lane, scope(lane), reason, rate, chance);
  };
  return {
    findings: [
      ...out.kept.map((row, place) => finding(row, 'out_of_tolerance', out.rates[place], outside[row])),
      ...leaving.kept.map((row, place) => finding(row, 'leaving_tolerance', leaving.rates[place], chances[row])),
    ],
    expectedInside: { out: out.expectedFalse, leaving: leaving.expectedFalse },
  };
}

/** Chance of each lane of being outside now; NaN where level or band is unknown and for units left out. */
function outsideNow(drift: Table, skip: (unit: string) => boolean): Float64Array {
  const unit = textsOf(drift, 'unit');
  const [level, sd, lower, upper] = ['level_now', 'level_now_sd', 'lower_limit', 'upper_limit'].map((name) =>
    numbersOf(drift, name),
  );
  return level.map((value, row) =>
    skip(textAt(unit, row)) ? Number.NaN : probabilityOutside(value, sd[row], lower[row], upper[row]),
  );
}

function toFinding(
  lane: DriftLane,
  scope: Scope,
  reason: Finding['reason'],
  rate: number,
  probability: number,
): Finding {
  const facts = { ...lane, ...scope };
  const leaving = reason === 'leaving_tolerance';
  return {
    unit: lane.unit,
    fuel: lane.fuel,
    fire: lane.fire,
    reason,
    probability,
    byDate: leaving ? lane.horizonDay : Number.NaN,
    falseDiscoveryRate: rate,
    evidence: leaving ? leavingTolerance(facts) : outOfTolerance(facts),
    checkFirst: checkTolerance(facts),
    readingsUsed: lane.readings,
    urgency: probability,
  };
}
