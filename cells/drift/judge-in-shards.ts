import type { CellContext } from '../../shared/cell.ts';
import { enlist } from '../../shared/crew.ts';
import type { LaneBand } from '../../shared/foresight/band-of-lane.ts';
import type { FittedDrift } from '../../shared/foresight/fitted-drift.ts';
import { type DriftRow, type JudgeOptions, type JudgeTables, judgeDrift } from '../../shared/foresight/judge-drift.ts';
import { type JudgedLane, type JudgeQuestion, judgeLane } from '../../shared/foresight/judge-lane.ts';

/** Below this a helper costs more than it brings. The borders depend on nothing else. */
const LANES_A_SHARD = 2048;

interface LaneCase {
  readonly question: JudgeQuestion;
  readonly band: LaneBand;
}

/** What a helper does: judges the lanes of one shard. */
export const judgeShard = (cases: readonly LaneCase[]) => (): readonly JudgedLane[] =>
  cases.map(({ question, band }) => judgeLane(question, band));

/** Judges the lanes of a large fleet a shard at a time, in helpers where there are any; the result is that of judgeDrift. */
export async function judgeInShards(
  context: CellContext,
  fitted: FittedDrift,
  tables: JudgeTables,
  options: JudgeOptions,
): Promise<DriftRow[]> {
  if (fitted.lanes.length <= LANES_A_SHARD) return judgeDrift(fitted, tables, options);
  const cases: LaneCase[] = [];
  judgeDrift(fitted, tables, options, (question, band) => {
    cases.push({ question, band });
    return LATER;
  });
  const shards: LaneCase[][] = [];
  for (let from = 0; from < cases.length; from += LANES_A_SHARD) shards.push(cases.slice(from, from + LANES_A_SHARD));
  const crew = await enlist(context, 'judge', judgeShard, shards);
  const judged = (await crew.ask(undefined as never)).flat();
  crew.dismiss();
  let lane = 0;
  return judgeDrift(fitted, tables, options, () => judged[lane++]);
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
