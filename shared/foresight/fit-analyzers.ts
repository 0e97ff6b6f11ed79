import type { Pieces } from '../pieces.ts';
import { type AnalyzerChange, analyzerChanges } from './analyzer-change.ts';
import { type AnalyzerInterval, intervalsOf } from './analyzer-intervals.ts';
import type { AnalyzerSplit, DriftReadings } from './drift-readings.ts';
import type { EstimateOptions } from './estimate-spread.ts';
import { type FleetFit, fittingModel } from './fit-model.ts';
import type { FleetPasses } from './fleet-passes.ts';
import { splitAnalyzers } from './split-analyzers.ts';
import { DRIFT_PRIOR } from './spread.ts';

/** Analyzers that are told as two at most; each costs a fit. */
const MOST_SPLITS = 3;

export interface AnalyzersFit {
  /** The readings as they were fitted. */
  readonly read: DriftReadings;
  readonly fit: FleetFit;
  readonly passes: FleetPasses;
  readonly intervals: readonly AnalyzerInterval[];
}

/** Days within which analyzers that change alike change together. */
const TOGETHER_DAYS = 200;

/**
 * The fit in which an analyzer that reads otherwise from a day on is two analyzers: with one bias for all its years, what it
 * came to read high would be blamed on the units it read since. The surest change first, since it makes others seem to have
 * changed too; then all is fitted again, as long as a change is shown. Where most analyzers in use come to change alike within
 * half a year it is what they read that changed, the gas or the weather, and none is told as two.
 */
export function* fittingAnalyzers(read: DriftReadings, options: Omit<EstimateOptions, 'prior'>): Pieces<AnalyzersFit> {
  let changes: readonly OwnChange[] = [];
  let most = MOST_SPLITS;
  let { start } = options;
  for (;;) {
    yield;
    const split = splitAnalyzers(read, changes);
    const { fit, passes } = yield* fittingModel(split.fleet, { ...options, prior: DRIFT_PRIOR, start });
    const intervals = intervalsOf(split, fit);
    const change = changes.length < most ? surestChange(split, fit, intervals, changes) : undefined;
    if (!change) return { read: split, fit, passes, intervals };
    start = fit.estimate;
    const together = [...changes, change].filter((other) => isTogether(other, change));
    const isFleet = 2 * together.length > analyzersSince(read, change.on);
    if (isFleet && together.length === 1) return { read: split, fit, passes, intervals };
    changes = isFleet ? changes.filter((other) => !together.includes(other)) : [...changes, change];
    if (isFleet) most = changes.length;
  }
}

/** A change of an analyzer, with its code. */
type OwnChange = AnalyzerChange & AnalyzerSplit;

const isTogether = (one: OwnChange, other: OwnChange): boolean =>
  one.upward === other.upward && Math.abs(one.on - other.on) <= TOGETHER_DAYS;

/** How many analyzers were used since a day. */
function analyzersSince({ fleet }: DriftReadings, on: number): number {
  return new Set(fleet.analyzer.filter((code, row) => code >= 0 && fleet.day[row] >= on)).size;
}

function surestChange(
  { fleet, analyzers }: DriftReadings,
  { effects }: FleetFit,
  intervals: readonly AnalyzerInterval[],
  known: readonly OwnChange[],
): OwnChange | undefined {
  const whole = analyzers.length - known.length;
  const changes = analyzerChanges(intervals, effects.values.subarray(0, fleet.analyzers)).flatMap((change, of) =>
    change && of < whole && !known.some((one) => one.of === of) ? [{ ...change, of }] : [],
  );
  if (changes.length === 0) return undefined;
  return changes.reduce((surest, change) => (change.chance < surest.chance ? change : surest));
}
