import type { CellContext } from '../../shared/cell.ts';
import { enlist } from '../../shared/crew.ts';
import type { BandSource, LaneBand } from '../../shared/foresight/band-of-lane.ts';
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
  readonly tables: JudgeTables;
  readonly options: JudgeOptions;
  /** By number of the fitted lane. */
  readonly rows: readonly DriftRow[];
  readonly cases: readonly (LaneCase | undefined)[];
}

interface Asked {
  readonly lane: number;
  readonly of: LaneCase;
  /** Dates of leaving that are known already, since they do not hang on the horizon. */
  readonly leavesOn: JudgedLane['leavesOn'] | undefined;
}

/**
 * What was last judged of a fit: a changed band of some lanes leaves the others as they were, and a changed horizon leaves
 * every date of leaving.
 */
const lastOf = new WeakMap<object, Judgement>();

/** What a helper does: judges the lanes of one shard. */
export const judgeShard =
  (cases: readonly LaneCase[]) =>
  (_: undefined): readonly JudgedLane[] =>
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
  const last = lastOf.get(fit);
  const cases = last?.cases.slice() ?? new Array<LaneCase | undefined>(fitted.lanes.length);
  const asked: Asked[] = [];
  const keeps = last !== undefined && isSameQuestion(last, tables, options);
  let next = 0;
  const kept = (lane: number): DriftRow | undefined => {
    next = lane;
    const row = keeps ? last.rows[lane] : undefined;
    return row && FROM_REGISTER.has(row.band.source) ? row : undefined;
  };
  const unjudged = judgeDrift(
    fitted,
    tables,
    options,
    (question, band) => {
      const [before, now] = [last?.cases[next], { question, band }];
      const same = last && before && isSameButHorizon(now, before) ? last.rows[next].judged : undefined;
      if (same && question.horizon === before?.question.horizon) return same;
      cases[next] = now;
      const of = same ? { question: { ...question, dates: false }, band } : now;
      asked.push({ lane: next, of, leavesOn: same?.leavesOn });
      return LATER;
    },
    kept,
  );
  await context.pause();
  const judged = await judgeCases(context, asked);
  const rows = unjudged.map((row) => {
    const anew = judged.get(row.lane);
    return anew ? { ...row, judged: anew } : row;
  });
  const byLane = new Array<DriftRow>(fitted.lanes.length);
  for (const row of rows) if (row.lane >= 0) byLane[row.lane] = row;
  lastOf.set(fit, { tables, options, rows: byLane, cases });
  return rows;
}

/** Bands that the usual ones have no part in. */
const FROM_REGISTER: ReadonlySet<BandSource> = new Set<BandSource>(['service', 'setting']);

const isSameQuestion = ({ tables, options }: Judgement, now: JudgeTables, asked: JudgeOptions): boolean =>
  tables.limits === now.limits &&
  tables.units === now.units &&
  tables.events === now.events &&
  options.horizonDays === asked.horizonDays &&
  options.quantity === asked.quantity &&
  options.dates === asked.dates;

async function judgeCases(context: CellContext, asked: readonly Asked[]): Promise<ReadonlyMap<number, JudgedLane>> {
  if (asked.length === 0) return new Map();
  const shards: LaneCase[][] = [];
  for (let from = 0; from < asked.length; from += LANES_A_SHARD)
    shards.push(asked.slice(from, from + LANES_A_SHARD).map(({ of }) => of));
  const crew = await enlist(context, 'judge', judgeShard, shards);
  const parts = (await crew.ask(undefined)).flat();
  crew.dismiss();
  return new Map(
    asked.map(({ lane, leavesOn }, place) => [lane, leavesOn ? { ...parts[place], leavesOn } : parts[place]]),
  );
}

/** Of one lane of one fit: its state follows from the quantity, and the day of the fit is the same. */
function isSameButHorizon(now: LaneCase, before: LaneCase): boolean {
  const [a, b] = [now.question, before.question];
  return (
    Object.is(now.band.lower, before.band.lower) &&
    Object.is(now.band.upper, before.band.upper) &&
    now.band.quantity === before.band.quantity &&
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
