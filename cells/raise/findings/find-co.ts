import { checkCo, coHigh, coOverRange } from '../../../shared/messages/raise.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import type { RaiseParameters } from '../parameters.ts';
import { closedBy } from './closing.ts';

/** A reading leaner than this has lost the flue gas: it may not close a high CO, and air-free CO means little in it. */
const LEAN_O2_PCT = 15;
/** From here on the probe is out of the flue. */
const PROBE_OUT_O2_PCT = 18;

type Judged = 'over_range' | 'high' | 'low' | 'unknown';

/**
 * High CO that no later valid reading at the same fire and fuel has closed. A measured fact: no statistics, no time
 * limit. A reading over the sensor's range is at least that and comes first.
 */
export function findCo(fleet: Fleet, parameters: RaiseParameters): Finding[] {
  const { readings } = fleet;
  const judge = coJudge(fleet, parameters);
  const isHigh = (row: number): boolean => judge.of(row) === 'high' || judge.of(row) === 'over_range';
  const findings: Finding[] = [];
  for (const [unit, rows] of readings.byUnit) {
    if (!rows.some(isHigh)) continue;
    for (const lane of readings.lanesOf(unit)) {
      const open = openHigh(fleet, lane, judge.of);
      if (open) findings.push(finding(fleet, parameters, unit, open, lane, judge));
    }
  }
  return findings;
}

/** The high reading that is still open: over the range before any number, then the latest. */
function openHigh(
  { readings }: Fleet,
  lane: readonly number[],
  judge: (row: number) => Judged,
): { row: number; judged: Judged } | undefined {
  const highs = lane.filter((row) => judge(row) === 'high' || judge(row) === 'over_range');
  if (highs.length === 0) return undefined;
  const isClosed = closedBy(
    readings,
    lane.filter((row) => judge(row) === 'low'),
  );
  const open = highs.filter((row) => !isClosed(row));
  const row = open.findLast((high) => judge(high) === 'over_range') ?? open.at(-1);
  return row === undefined ? undefined : { row, judged: judge(row) };
}

interface CoJudge {
  of(row: number): Judged;
  /** The number that is judged, on the basis of the limit; NaN where it is not known. */
  readonly value: Float64Array;
  readonly raw: Float64Array;
}

function coJudge({ readings }: Fleet, { coLimitPpm, coBasis }: RaiseParameters): CoJudge {
  const raw = readings.number('co_ppm');
  const o2 = readings.number('o2_pct');
  const column = { air_free: 'co_air_free_ppm', at_3pct_o2: 'co_at_3pct_o2_ppm', as_measured: 'co_ppm' }[coBasis];
  const value = readings.number(column);
  const [bound, boundAirFree] = [readings.bounds('co_ppm'), readings.bounds('co_air_free_ppm')];
  const of = (row: number): Judged => {
    if (bound[row] > 0 || boundAirFree[row] > 0) return 'over_range';
    const probeOut = o2[row] > PROBE_OUT_O2_PCT;
    // Air-free CO is never less than what the analyzer shows, so a high raw number is high without any O2.
    if (coBasis !== 'at_3pct_o2' && raw[row] >= coLimitPpm) return 'high';
    if (value[row] >= coLimitPpm) return probeOut ? 'unknown' : 'high';
    return value[row] < coLimitPpm && !(o2[row] > LEAN_O2_PCT) ? 'low' : 'unknown';
  };
  return { of, value, raw };
}

function finding(
  { readings }: Fleet,
  { coLimitPpm, coBasis }: RaiseParameters,
  unit: string,
  { row, judged }: { row: number; judged: Judged },
  lane: readonly number[],
  judge: CoJudge,
): Finding {
  const text = (column: string): string => readings.text(column)(row);
  const known = [judge.raw, judge.value].map((column) => column[row]).filter(Number.isFinite);
  const facts = {
    fire: text('fire'),
    fuel: text('fuel'),
    state: text('state'),
    rawPpm: judge.raw[row],
    valuePpm: judge.value[row],
    o2Pct: readings.number('o2_pct')[row],
    takenAt: writeDay(readings.day[row]),
    file: text('source_file'),
    line: readings.number('source_line')[row],
    limitPpm: coLimitPpm,
    basis: coBasis,
  };
  return {
    unit,
    fuel: facts.fuel,
    fire: facts.fire,
    reason: judged === 'over_range' ? 'co_over_range' : 'co_high',
    probability: Number.NaN,
    byDate: Number.NaN,
    falseDiscoveryRate: Number.NaN,
    evidence: judged === 'over_range' ? coOverRange(facts) : coHigh(facts),
    checkFirst: checkCo(),
    readingsUsed: lane.filter((other) => judge.of(other) !== 'unknown').length,
    row,
    urgency: Math.max(...known, 0),
  };
}
