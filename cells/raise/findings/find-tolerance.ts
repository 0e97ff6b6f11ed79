import { cutByExpectedFalse } from '../../../shared/limits/expected-false.ts';
import { guardedVerdict } from '../../../shared/limits/guarded-verdict.ts';
import { probabilityOutside } from '../../../shared/limits/probability-outside.ts';
import { verdictOf } from '../../../shared/limits/verdict.ts';
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
  const unit = textsOf(drift, 'unit');
  const unitAt = (row: number): string => textAt(unit, row);
  const outside = outsideNow(drift, (row) => skip(unitAt(row)));
  const out = cutByExpectedFalse(outside, leastChance, falseDiscoveryRate);
  const isOut = new Set(out.kept);
  const chances = chancesOfLeaving(drift, (row) => skip(unitAt(row)) || isOut.has(row));
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

const limitsOf = (drift: Table): Float64Array[] =>
  ['level_now', 'level_now_sd', 'lower_limit', 'upper_limit'].map((name) => numbersOf(drift, name));

/**
 * Chance of each lane of being outside now; NaN for one whose level lies inside, or outside but not clearly where it is known
 * no better than to half its band, and where level or band is unknown.
 */
function outsideNow(drift: Table, leftOut: (row: number) => boolean): Float64Array {
  const [level, sd, lower, upper] = limitsOf(drift);
  const isOutside = (row: number): boolean =>
    tooVague(sd[row], lower[row], upper[row])
      ? guardedVerdict(level[row], sd[row], lower[row], upper[row]) === 'outside'
      : verdictOf(level[row], lower[row], upper[row]) === 'outside';
  return level.map((value, row) =>
    upper[row] <= lower[row] || leftOut(row) || !isOutside(row)
      ? Number.NaN
      : probabilityOutside(value, sd[row], lower[row], upper[row]),
  );
}

/**
 * Chance of each lane of having left by the horizon; NaN for those left out and for those whose level is known no better
 * than to half their band: such a chance speaks of what is not known, not of the burner.
 */
function chancesOfLeaving(drift: Table, leftOut: (row: number) => boolean): Float64Array {
  const [, sd, lower, upper] = limitsOf(drift);
  return numbersOf(drift, 'probability_out_by_horizon').map((chance, row) =>
    leftOut(row) || tooVague(sd[row], lower[row], upper[row]) ? Number.NaN : chance,
  );
}

/** A limit that is not known bounds nothing, so that one-sided bands are never too narrow. */
const tooVague = (sd: number, lower: number, upper: number): boolean => upper <= lower || sd >= (upper - lower) / 2;

/** Lanes with a chance that is not told because their level is too vague. */
export function vagueLanes({ drift }: Fleet): number {
  if (!drift) return 0;
  const [level, sd, lower, upper] = limitsOf(drift);
  return level.filter((value, row) => Number.isFinite(value) && tooVague(sd[row], lower[row], upper[row])).length;
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
