import { exceeds } from '../limits/supply-verdicts.ts';
import { noDrop, noDropLimit, notEnoughDrops } from '../messages/foresight.ts';
import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { benjaminiHochberg } from '../statistics/benjamini-hochberg.ts';
import { normalCdf, normalQuantile } from '../statistics/normal.ts';
import type { Table } from '../table/table.ts';
import type { LaneStates } from './fit-fleet.ts';
import type { FleetFit } from './fit-model.ts';
import type { FittedSupply } from './fit-supply.ts';
import { LOOK_AHEAD_YEARS } from './judge-lane.ts';
import { chanceOutWithin, type LevelState, levelAt } from './leaving-chance.ts';
import { dropLimitOf, type LimitSource, type SupplyLimits, supplyLimitsOf } from './supply-limits.ts';
import type { SupplyPattern } from './supply-pattern.ts';
import { supplyPatterns } from './supply-patterns.ts';
import type { UnitSupply } from './supply-readings.ts';
import { yearsUntilChance } from './years-until-chance.ts';

export interface SupplyRow extends UnitSupply {
  readonly verdict: 'within' | 'growing' | 'over' | 'unknown';
  readonly reason: string;
  readonly used: number;
  readonly state: LevelState;
  readonly lastDay: number;
  readonly dropNow: number;
  readonly dropNowSd: number;
  readonly slopeLower: number;
  readonly slopeUpper: number;
  readonly pValue: number;
  readonly falseDiscoveryRate: number;
  readonly limit: number;
  readonly limitSource: LimitSource;
  readonly minimum: number;
  readonly maximum: number;
  readonly overBy: number;
  readonly exceedsOn: number;
  readonly horizon: number;
  readonly pattern: SupplyPattern;
}

export interface SupplyOptions {
  readonly horizonDays: number;
  readonly lookAheadYears: number;
  readonly falseDiscoveryRate: number;
}

/** Growth that is real matters where its chance of reaching the limit within the look-ahead is at least this. */
const MATTERS = 0.25;

const NINETY_FIVE = normalQuantile(0.975);

/** Each unit's drop against its limit; growth is called real by false-discovery control over all units. */
export function judgeSupply(
  units: readonly UnitSupply[],
  fitted: FittedSupply,
  limits: Table | undefined,
  asOf: number,
  options: SupplyOptions,
  linesOf: (unit: string) => readonly string[] = () => [],
): SupplyRow[] {
  const known = supplyLimitsOf(limits);
  const patterns = supplyPatterns(units, linesOf);
  const pValues = units.map((_, i) => growthOf(fitted, i));
  const rates = benjaminiHochberg(pValues);
  return units.map((unit, i) => ({
    ...judgeUnit(unit, i, fitted, known.get(unit.unit), asOf, options, pValues[i], rates[i]),
    pattern: patterns[i],
  }));
}

/** One-sided p value of "it does not grow" by the unit's own drops, three visits at least. */
function growthOf({ fit, own }: FittedSupply, unit: number): number {
  if (fit.written.series.visits[unit] < 3) return Number.NaN;
  return normalCdf(-own.rate[unit] / Math.sqrt(own.rateVariance[unit]));
}

function judgeUnit(
  unit: UnitSupply,
  index: number,
  { fit, own, scale }: FittedSupply,
  limits: SupplyLimits | undefined,
  asOf: number,
  options: SupplyOptions,
  pValue: number,
  falseDiscoveryRate: number,
): Omit<SupplyRow, 'pattern'> {
  const { series } = fit.written;
  const used = series.readings[index];
  const lastDay = series.to[index];
  const real = falseDiscoveryRate <= options.falseDiscoveryRate;
  // A unit whose growth has been found real is no longer one of its class, and is not drawn back to it.
  const state = stateOf(fit, real ? own : fit.states, index, scale[index]);
  const horizon = asOf + options.horizonDays;
  const since = Math.max(0, (asOf - lastDay) / DAYS_PER_YEAR);
  const now = levelAt(state, since);
  const { limit, limitSource } = dropLimitOf(unit, limits);
  const half = NINETY_FIVE * Math.sqrt(state.rateVariance);
  const judgeable = used > 0 && Number.isFinite(limit);
  const band = { lower: Number.NEGATIVE_INFINITY, upper: limit };
  const furthest = since + Math.max(LOOK_AHEAD_YEARS, options.lookAheadYears);
  const [mayBe, even] = judgeable ? yearsUntilChance(state, band, [MATTERS, 0.5], furthest) : [Number.NaN, Number.NaN];
  const exceedsOn = Math.ceil(lastDay + even * DAYS_PER_YEAR);
  const growing = real && lastDay + mayBe * DAYS_PER_YEAR <= asOf + options.lookAheadYears * DAYS_PER_YEAR;
  const over = exceeds(now.mean, limit);
  const reason = used === 0 ? noDrop() : !Number.isFinite(limit) ? noDropLimit() : used < 2 ? notEnoughDrops() : '';
  return {
    ...unit,
    verdict: !judgeable ? 'unknown' : over ? 'over' : growing ? 'growing' : reason === '' ? 'within' : 'unknown',
    reason,
    used,
    state,
    lastDay,
    dropNow: used > 0 ? now.mean : Number.NaN,
    dropNowSd: used > 0 ? now.sd : Number.NaN,
    slopeLower: state.rate - half,
    slopeUpper: state.rate + half,
    pValue,
    falseDiscoveryRate,
    limit,
    limitSource,
    minimum: limits?.minimum ?? Number.NaN,
    maximum: limits?.maximum ?? Number.NaN,
    overBy: judgeable ? chanceOutWithin(state, band, (horizon - lastDay) / DAYS_PER_YEAR) : Number.NaN,
    exceedsOn,
    horizon,
  };
}

/** The fitted drop in pascals; unknown where no reading is in force. */
function stateOf({ written, estimate }: FleetFit, states: LaneStates, unit: number, scale: number): LevelState {
  const factor = written.series.readings[unit] > 0 ? scale : Number.NaN;
  const square = factor * factor;
  return {
    level: states.level[unit] * factor,
    rate: states.rate[unit] * factor,
    levelVariance: states.levelVariance[unit] * square,
    rateVariance: states.rateVariance[unit] * square,
    covariance: states.covariance[unit] * square,
    wander: estimate.spread.wander * factor,
    rateWander: estimate.spread.rateWander * factor,
  };
}
