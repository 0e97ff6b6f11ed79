import { cutByExpectedFalse } from '../../shared/limits/expected-false.ts';
import { guardedVerdict } from '../../shared/limits/guarded-verdict.ts';
import { probabilityOutside } from '../../shared/limits/probability-outside.ts';
import { supplyMovesOxygen } from '../../shared/limits/supply-verdicts.ts';
import { checkTolerance, leavingTolerance, outOfTolerance, type ToleranceFacts } from '../../shared/messages/raise.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Finding } from './finding.ts';
import type { Fleet } from './fleet.ts';
import type { RaiseParameters } from './parameters.ts';

export interface ToleranceFindings {
  readonly findings: readonly Finding[];
  /** How many of the fires called outside, and of those called leaving, are expected to be found inside. */
  readonly expectedInside: { readonly out: number; readonly leaving: number };
}

/** Fires that are outside their band now, and those likely to leave it by the horizon. */
export function findTolerance(
  fleet: Fleet,
  parameters: RaiseParameters,
  skip: (unit: string) => boolean,
): ToleranceFindings {
  const { drift } = fleet;
  if (!drift) return { findings: [], expectedInside: { out: 0, leaving: 0 } };
  const lanes = readLanes(drift);
  const judged = lanes.map((lane) =>
    skip(lane.unit) ? Number.NaN : probabilityOutside(lane.level, lane.sd, lane.lower, lane.upper),
  );
  const out = cutByExpectedFalse(judged, parameters.leastChance, parameters.falseDiscoveryRate);
  const isOut = new Set(out.kept);
  const chances = lanes.map((lane, i) => (skip(lane.unit) || isOut.has(i) ? Number.NaN : lane.chance));
  const leaving = cutByExpectedFalse(chances, parameters.leastChance, parameters.falseDiscoveryRate);
  const raised = new Set([...out.kept, ...leaving.kept]);
  const scope = scopeOf(fleet, lanes, raised);
  const finding = (
    i: number,
    reason: 'out_of_tolerance' | 'leaving_tolerance',
    rate: number,
    probability: number,
  ): Finding => {
    const lane = lanes[i];
    const facts = { ...lane, ...scope(i) };
    const isLeaving = reason === 'leaving_tolerance';
    return {
      unit: lane.unit,
      fuel: lane.fuel,
      fire: lane.fire,
      reason,
      probability,
      byDate: isLeaving ? lane.horizonDay : Number.NaN,
      falseDiscoveryRate: rate,
      evidence: isLeaving ? leavingTolerance(facts) : outOfTolerance(facts),
      checkFirst: checkTolerance(facts),
      readingsUsed: lane.readings,
      urgency: probability,
    };
  };
  return {
    findings: [
      ...out.kept.map((i, place) => finding(i, 'out_of_tolerance', out.rates[place], judged[i])),
      ...leaving.kept.map((i, place) => finding(i, 'leaving_tolerance', leaving.rates[place], chances[i])),
    ],
    expectedInside: { out: out.expectedFalse, leaving: leaving.expectedFalse },
  };
}

interface DriftLane
  extends Omit<ToleranceFacts, 'bothFires' | 'supplyLow' | 'supplyRaised' | 'analyzer' | 'analyzerBias' | 'control'> {
  readonly unit: string;
  readonly horizonDay: number;
}

function readLanes(drift: Table): DriftLane[] {
  const texts = Object.fromEntries(
    ['unit', 'fuel', 'fire', 'quantity', 'slope_source', 'band_source'].map((name) => [name, textsOf(drift, name)]),
  );
  const numbers = Object.fromEntries(
    [...drift.columns].filter(([, { kind }]) => kind !== 'text').map(([name]) => [name, numbersOf(drift, name)]),
  );
  const number = (name: string, row: number): number => numbers[name]?.[row] ?? Number.NaN;
  return Array.from({ length: drift.rows }, (_, row) => {
    const text = (name: string): string => textAt(texts[name], row);
    const [level, sd, lower, upper] = ['level_now', 'level_now_sd', 'lower_limit', 'upper_limit'].map((name) =>
      number(name, row),
    );
    return {
      unit: text('unit'),
      fuel: text('fuel'),
      fire: text('fire'),
      quantity: text('quantity'),
      readings: number('readings_used', row),
      level,
      sd,
      lower,
      upper,
      verdict: guardedVerdict(level, sd, lower, upper),
      slope: number('slope_per_year', row),
      slopeLower: number('slope_lower', row),
      slopeUpper: number('slope_upper', row),
      slopeSource: text('slope_source'),
      bandSource: text('band_source'),
      chance: number('probability_out_by_horizon', row),
      horizonDay: number('horizon_on', row),
      horizonOn: writeDay(number('horizon_on', row)),
      leavesOn: writeDay(number('leaves_on_50', row)),
      lastVisitOn: writeDay(number('last_visit_on', row)),
      levelLeft: number('level_left', row),
      marginLeft: number('margin_left', row),
      asMeasured: number('last_as_measured', row),
    };
  });
}

/** +1 where a lane goes rich (CO2 up, O2 down), -1 lean, by the level where it is outside and else by its drift. */
const richness = ({ quantity, level, lower, upper, slope }: DriftLane): number => {
  const upward = level > upper ? 1 : level < lower ? -1 : Math.sign(slope);
  return quantity === 'o2_pct' ? -upward : upward;
};

type Scope = Pick<ToleranceFacts, 'bothFires' | 'supplyLow' | 'supplyRaised' | 'analyzer' | 'analyzerBias' | 'control'>;

/** Attribution by scope, widest first: the analyzer, the gas supply, the unit (both fires alike), the one fire. */
function scopeOf(fleet: Fleet, lanes: readonly DriftLane[], raised: ReadonlySet<number>): (lane: number) => Scope {
  const directions = new Map<string, Set<string>>();
  for (const i of raised) {
    const { unit, fuel, fire } = lanes[i];
    const name = `${unit}\u0000${fuel}\u0000${richness(lanes[i])}`;
    directions.set(name, (directions.get(name) ?? new Set<string>()).add(fire));
  }
  const supply = supplyState(fleet);
  const analyzer = lastAnalyzer(fleet);
  const control = controls(fleet);
  return (i) => {
    const { unit, fuel, fire } = lanes[i];
    const name = `${unit}\u0000${fuel}\u0000${richness(lanes[i])}`;
    return {
      bothFires: (directions.get(name)?.size ?? 0) > 1,
      ...supply(unit),
      ...analyzer(unit, fuel, fire, lanes[i].quantity),
      control: control(unit),
    };
  };
}

function supplyState({ supply }: Fleet): (unit: string) => Pick<Scope, 'supplyLow' | 'supplyRaised'> {
  const states = new Map<string, Pick<Scope, 'supplyLow' | 'supplyRaised'>>();
  if (supply) {
    const [unit, verdict] = [textsOf(supply, 'unit'), textsOf(supply, 'verdict')];
    const [running, minimum] = [numbersOf(supply, 'running_now_Pa'), numbersOf(supply, 'supply_min_Pa')];
    for (let row = 0; row < supply.rows; row++)
      states.set(textAt(unit, row), {
        supplyLow: supplyMovesOxygen(running[row], minimum[row]),
        supplyRaised: ['over', 'growing'].includes(textAt(verdict, row)),
      });
  }
  return (unit) => states.get(unit) ?? { supplyLow: false, supplyRaised: false };
}

/** The analyzer of the last reading of a lane, where it is known to read high or low everywhere. */
function lastAnalyzer({
  readings,
  instruments,
}: Fleet): (unit: string, fuel: string, fire: string, quantity: string) => Pick<Scope, 'analyzer' | 'analyzerBias'> {
  const none = { analyzer: '', analyzerBias: Number.NaN };
  if (!instruments) return () => none;
  const [name, verdict] = [textsOf(instruments, 'analyzer'), textsOf(instruments, 'verdict')];
  const biased = new Map<string, number>();
  for (let row = 0; row < instruments.rows; row++)
    if (textAt(verdict, row) === 'biased') biased.set(textAt(name, row), row);
  if (biased.size === 0) return () => none;
  const [fuelAt, fireAt, analyzerAt] = ['fuel', 'fire', 'analyzer'].map((column) => readings.text(column));
  return (unit, fuel, fire, quantity) => {
    const last = (readings.byUnit.get(unit) ?? []).findLast((row) => fuelAt(row) === fuel && fireAt(row) === fire);
    const row = last === undefined ? undefined : biased.get(analyzerAt(last));
    if (last === undefined || row === undefined) return none;
    const column = quantity === 'o2_pct' ? 'o2_bias_pct' : 'co2_bias_pct';
    return { analyzer: analyzerAt(last), analyzerBias: numbersOf(instruments, column)[row] };
  };
}

function controls({ units }: Fleet): (unit: string) => string {
  const control = new Map<string, string>();
  if (units) {
    const [unit, kind] = [textsOf(units, 'unit'), textsOf(units, 'fuel_air_control')];
    for (let row = 0; row < units.rows; row++) control.set(textAt(unit, row), textAt(kind, row));
  }
  return (unit) => control.get(unit) ?? '';
}
