import { emptyBand, noBand, noReadings, tooOld } from '../messages/foresight.ts';
import { DAYS_PER_YEAR, writeDay } from '../quantities/dates.ts';
import type { LaneBand } from './band-of-lane.ts';
import { chanceOutsideAt, chanceOutWithin, type LevelState, levelAt } from './leaving-chance.ts';
import { yearsUntilChance } from './years-until-chance.ts';

/** A level left alone for longer says nothing about today. */
export const FURTHEST_YEARS = 10;
/** Dates of leaving are looked for this far ahead of the day the notebook looks from. */
export const LOOK_AHEAD_YEARS = 5;

export interface JudgedLane {
  readonly levelNow: number;
  readonly levelNowSd: number;
  readonly marginNow: number;
  readonly marginLeft: number;
  readonly outBy: number;
  readonly outsideAt: number;
  readonly leavesOn: readonly [number, number, number];
  readonly reason: string;
}

const UNKNOWN: Omit<JudgedLane, 'reason'> = {
  levelNow: Number.NaN,
  levelNowSd: Number.NaN,
  marginNow: Number.NaN,
  marginLeft: Number.NaN,
  outBy: Number.NaN,
  outsideAt: Number.NaN,
  leavesOn: [Number.NaN, Number.NaN, Number.NaN],
};

export interface JudgeQuestion {
  /** As left at the last visit, in the quantity's points. */
  readonly state: LevelState;
  readonly lastVisit: number;
  readonly asOf: number;
  readonly horizon: number;
  /** Why the lane cannot be judged whatever its readings, '' where it can. */
  readonly reason: string;
  /** Why no chance can be told though the level is known, '' where it can. */
  readonly noChance: string;
  /** Whether the dates of leaving are wanted: they cost more than twice what the chances do. */
  readonly dates: boolean;
}

/** A fitted lane against its band. All days count from 1970-01-01. */
export function judgeLane(question: JudgeQuestion, band: LaneBand): JudgedLane {
  const { state, lastVisit, asOf, horizon, reason } = question;
  if (reason !== '') return { ...UNKNOWN, reason };
  if (!Number.isFinite(lastVisit) || !Number.isFinite(state.level)) return { ...UNKNOWN, reason: noReadings() };
  const since = (asOf - lastVisit) / DAYS_PER_YEAR;
  if (since > FURTHEST_YEARS) return { ...UNKNOWN, reason: tooOld(writeDay(lastVisit), FURTHEST_YEARS) };
  const now = levelAt(state, Math.max(0, since));
  const level = { ...UNKNOWN, levelNow: now.mean, levelNowSd: now.sd };
  if (question.noChance !== '') return { ...level, reason: question.noChance };
  if (!(Number.isFinite(band.lower) || Number.isFinite(band.upper))) return { ...level, reason: noBand() };
  if (band.lower >= band.upper) return { ...level, reason: emptyBand(String(band.lower), String(band.upper)) };
  const barriers = {
    lower: Number.isFinite(band.lower) ? band.lower : Number.NEGATIVE_INFINITY,
    upper: Number.isFinite(band.upper) ? band.upper : Number.POSITIVE_INFINITY,
  };
  const ahead = Math.max(0, (horizon - lastVisit) / DAYS_PER_YEAR);
  const margin = (value: number): number => rounded(Math.min(value - barriers.lower, barriers.upper - value));
  const years = question.dates
    ? yearsUntilChance(state, barriers, [0.1, 0.5, 0.9], Math.max(0, since) + LOOK_AHEAD_YEARS)
    : [Number.NaN, Number.NaN, Number.NaN];
  // Having been outside is at least as likely as being outside; both are told as 0 below what they are accurate to.
  const outsideAt = orNothing(chanceOutsideAt(state, barriers, ahead));
  const outBy = Math.max(outsideAt, orNothing(chanceOutWithin(state, barriers, ahead)));
  const [tenth, half, most] = years.map((span) => Math.ceil(lastVisit + span * DAYS_PER_YEAR));
  return {
    levelNow: now.mean,
    levelNowSd: now.sd,
    marginNow: margin(now.mean),
    marginLeft: margin(state.level),
    outBy,
    outsideAt,
    leavesOn: [tenth, half, most],
    reason: '',
  };
}

/** A level on its limit has no margin, whatever the last bit says. */
const rounded = (margin: number): number => (Math.abs(margin) < 1e-9 ? 0 : margin);
const orNothing = (chance: number): number => (chance < 1e-9 ? 0 : chance);
