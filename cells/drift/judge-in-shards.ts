import type { CellContext } from '../../shared/cell.ts';
import { enlist } from '../../shared/crew.ts';
import type { LaneBand } from '../../shared/foresight/band-of-lane.ts';
import type { FittedDrift } from '../../shared/foresight/fitted-drift.ts';
import { type DriftRow, type JudgeOptions, type JudgeTables, judgeDrift } from '../../shared/foresight/judge-drift.ts';
import { type JudgedLane, type JudgeQuestion, judgeLane } from '../../shared/foresight/judge-lane.ts';

/** Below this a helper costs more than it brings. The borders depend on nothing else. */
const LANES_A_SHARD = 1024;

interface LaneCase {
  readonly question: JudgeQuestion;
  readonly band: LaneBand;
}

interface Judgement {
  readonly cases: readonly LaneCase[];
  readonly judged: readonly JudgedLane[];
}

/** What was last judged of a fit: a changed band of some lanes leaves the others as they were. */
const lastOf = new WeakMap<object, Judgement>();

/** What a helper does: judges the lanes of one shard. */
export const judgeShard = (cases: readonly LaneCase[]) => (): readonly JudgedLane[] =>
  cases.map(({ question, band }) => judgeLane(question, band));

/**
 * Judges the lanes of a large fleet a shard at a time, in helpers where there are any; the result is that of judgeDrift.
 * @param fit what stays the same object while the fit is the same
 */
export async function judgeInShards(
  context: CellContext,
  fitted: FittedDrift,
  tables: JudgeTables,
  options: JudgeOptions,
  fit: object = fitted,
): Promise<DriftRow[]> {
  const cases: LaneCase[] = [];
  const rows = judgeDrift(fitted, tables, options, (question, band) => {
    cases.push({ question, band });
    return LATER;
  });
  await context.pause();
  const judged = await judgeChanged(context, cases, lastOf.get(fit));
  lastOf.set(fit, { cases, judged });
  return rows.map((row) => (row.lane < 0 ? row : { ...row, judged: judged[row.lane] }));
}

async function judgeChanged(
  context: CellContext,
  cases: readonly LaneCase[],
  last: Judgement | undefined,
): Promise<readonly JudgedLane[]> {
  const changed: number[] = [];
  for (let lane = 0; lane < cases.length; lane++)
    if (!last || !isSame(cases[lane], last.cases[lane])) changed.push(lane);
  const shards: LaneCase[][] = [];
  for (let from = 0; from < changed.length; from += LANES_A_SHARD)
    shards.push(changed.slice(from, from + LANES_A_SHARD).map((lane) => cases[lane]));
  const crew = await enlist(context, 'judge', judgeShard, shards);
  const anew = (await crew.ask(undefined as never)).flat();
  crew.dismiss();
  const judged = last ? last.judged.slice() : new Array<JudgedLane>(cases.length);
  changed.forEach((lane, place) => {
    judged[lane] = anew[place];
  });
  return judged;
}

/** Of one lane of one fit: its state follows from the quantity, and the day of the fit is the same. */
function isSame(now: LaneCase, before: LaneCase): boolean {
  const [a, b] = [now.question, before.question];
  return (
    Object.is(now.band.lower, before.band.lower) &&
    Object.is(now.band.upper, before.band.upper) &&
    now.band.quantity === before.band.quantity &&
    a.horizon === b.horizon &&
    a.reason === b.reason &&
    a.noChance === b.noChance &&
    a.dates === b.dates &&
    Object.is(a.state.level, b.state.level)
  );
}

/** Stands in for a verdict until it is there. */
const LATER: JudgedLane = {
  levelNow: Number.NaN,
  levelNowSd: Number.NaN,
  marginNow: Number.NaN,
  marginLeft: Number.NaN,
  outBy: Number.NaN,
  outsideAt: Number.NaN,
  leavesOn: [Number.NaN, Number.NaN, Number.NaN],
  reason: '',
};
