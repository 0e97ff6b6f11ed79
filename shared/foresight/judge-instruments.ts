import {
  asMostRead,
  biasOf,
  changedSince,
  confoundedBias,
  constantSince,
  noneCompared,
  withinBias,
} from '../messages/foresight.ts';
import { writeDay } from '../quantities/dates.ts';
import { instrumentsSchema } from '../schemas/instruments.ts';
import { medianOf } from '../statistics/median-of.ts';
import { normalCdf } from '../statistics/normal.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { groupRows, rollUp } from '../table/verbs.ts';
import { MOST_ANALYZERS } from './most-used-analyzers.ts';
import { tableOfRecords } from './table-of-records.ts';

export interface InstrumentRow {
  readonly analyzer: string;
  readonly readings: number;
  readonly units: number;
  /** Day of its first reading in the fit; NaN without one. */
  readonly from: number;
  readonly o2: Bias;
  readonly co2: Bias;
  readonly verdict: 'within' | 'biased' | 'confounded' | 'unknown';
  readonly reason: string;
  /** The day from which it is told to read off; NaN unless biased. */
  readonly offSince: number;
  /** The day from which it reads otherwise, and its O2 bias before; NaN where no such day is shown. */
  readonly changedOn: number;
  readonly before: number;
  /** See apparent-drift.ts; NaN where it never followed another analyzer. */
  readonly apparentChange: number;
  readonly changeByBias: number;
  readonly driftShare: number;
}

/** An analyzer as the fit knows it. */
interface Fitted {
  readonly o2: Bias;
  readonly co2: Bias;
  readonly compared: number;
  readonly from: number;
  /** A change of its O2 bias: the day, and the bias before; NaN where none is shown. */
  readonly changedOn: number;
  readonly before: number;
  /** The O2 bias from that day on. */
  readonly since: Bias;
}

/** In points of the quantity; NaN where the analyzer measured none. */
interface Bias {
  readonly value: number;
  readonly sd: number;
  /** What it was taken to be before any reading. */
  readonly priorSd: number;
}

/** A bias is called real when it lies on one side of zero with this certainty. */
const CERTAINTY = 0.975;
/** Changes of hands with other analyzers below which a bias is the units' as well as the analyzer's. */
const ENOUGH_COMPARED = 3;
/** Biases below which there is no saying what most read. */
const LEAST_FOR_MOST = 3;
/** The readings have told nothing of a bias that is still this share as uncertain as before them. */
const TOLD_NOTHING = 0.9;

/** Every analyzer that a reading names, sorted by name. */
export function judgeInstruments(readings: Table, analyzers: Table, tolerancePct: number): InstrumentRow[] {
  const counted = countReadings(readings);
  const name = textsOf(analyzers, 'analyzer');
  const rows = new Map(Array.from({ length: analyzers.rows }, (_, row) => [textAt(name, row), row]));
  const usual = usualBiases(analyzers);
  return [...counted.keys()].sort().map((analyzer) => {
    const row = rows.get(analyzer) ?? -1;
    const value = (column: string): number => (row < 0 ? Number.NaN : numbersOf(analyzers, column)[row]);
    const fitted = fittedAnalyzer(value);
    const { from, o2, co2 } = fitted;
    return {
      analyzer,
      readings: counted.get(analyzer) ?? 0,
      units: row < 0 ? 0 : value('units'),
      from,
      o2,
      co2,
      changedOn: fitted.changedOn,
      before: fitted.before,
      apparentChange: value('apparent_change_pct'),
      changeByBias: value('change_by_bias_pct'),
      driftShare: value('drift_share'),
      ...verdictOn(fitted, tolerancePct, usual),
    };
  });
}

function fittedAnalyzer(value: (column: string) => number): Fitted {
  const o2 = { value: value('o2_bias_pct'), sd: value('o2_bias_pct_sd'), priorSd: value('o2_prior_sd') };
  return {
    o2,
    co2: { value: value('co2_bias_pct'), sd: value('co2_bias_pct_sd'), priorSd: value('co2_prior_sd') },
    compared: value('compared'),
    from: value('read_from'),
    changedOn: value('changed_on'),
    before: value('o2_bias_before_pct'),
    since: { value: value('o2_bias_since_pct'), sd: value('o2_bias_since_pct_sd'), priorSd: o2.priorSd },
  };
}

interface UsualBiases {
  readonly o2: number;
  readonly co2: number;
}

/**
 * What most analyzers read: the median of those compared, of one that changed before and since. One that reads far off draws
 * the fleet's mean toward itself, and the sound ones seem off the other way. NaN where too few are compared for there to be most.
 */
function usualBiases(analyzers: Table): UsualBiases {
  const [compared, o2, before, co2] = ['compared', 'o2_bias_pct', 'o2_bias_before_pct', 'co2_bias_pct'].map((column) =>
    numbersOf(analyzers, column),
  );
  const usual = (...columns: readonly Float64Array[]): number => {
    const known = columns.flatMap((values) => [...values].filter((_, row) => compared[row] >= ENOUGH_COMPARED));
    const told = known.filter(Number.isFinite);
    return told.length < LEAST_FOR_MOST ? Number.NaN : medianOf(told);
  };
  return { o2: usual(o2, before), co2: usual(co2) };
}

/** What an analyzer reads today counts: where its O2 bias is shown to have changed, the bias since. */
function verdictOn(
  fitted: Fitted,
  tolerance: number,
  usual: UsualBiases,
): Pick<InstrumentRow, 'verdict' | 'reason' | 'offSince'> {
  const changed = Number.isFinite(fitted.changedOn);
  const [o2, co2] = [changed ? fitted.since : fitted.o2, fitted.co2];
  if (Number.isNaN(fitted.compared))
    return { verdict: 'unknown', reason: noneCompared(MOST_ANALYZERS), offSince: Number.NaN };
  const known = [o2, co2].filter(({ value, sd }) => Number.isFinite(value) && Number.isFinite(sd));
  const toldNothing = !changed && known.every(({ sd, priorSd }) => sd > TOLD_NOTHING * priorSd);
  if (!(fitted.compared >= ENOUGH_COMPARED) || toldNothing)
    return { verdict: 'confounded', reason: confoundedBias(), offSince: Number.NaN };
  const off = (apart: number, sd: number): boolean =>
    Math.abs(apart) > tolerance && normalCdf(Math.abs(apart) / sd) > CERTAINTY;
  const biased = ({ value, sd }: Bias, most: number): boolean =>
    off(value, sd) && (Number.isNaN(most) || off(value - most, sd));
  const [o2Off, co2Off] = [biased(o2, usual.o2), biased(co2, usual.co2)];
  const reasons = [o2Off ? told('O2', o2) : '', co2Off ? told('CO2', co2) : ''].filter((text) => text !== '');
  if (reasons.length === 0) {
    const asMost = off(o2.value, o2.sd) || off(co2.value, co2.sd);
    return { verdict: 'within', reason: asMost ? asMostRead() : withinBias(), offSince: Number.NaN };
  }
  const offSince = changed && o2Off ? fitted.changedOn : fitted.from;
  return { verdict: 'biased', reason: `${reasons.join('; ')}${sinceWhen(fitted, offSince)}`, offSince };
}

const signed = (value: number): string => `${value > 0 ? '+' : ''}${value.toFixed(2)}`;
const told = (quantity: string, { value, sd }: Bias): string => biasOf(quantity, signed(value), sd.toFixed(2));

function sinceWhen({ changedOn, before }: Fitted, offSince: number): string {
  if (!Number.isFinite(offSince)) return '';
  return offSince === changedOn ? changedSince(writeDay(changedOn), signed(before)) : constantSince(writeDay(offSince));
}

function countReadings(readings: Table): Map<string, number> {
  const column = textsOf(readings, 'analyzer');
  const [counted] = rollUp(readings, ['analyzer'], [{ column: 'taken_at', by: 'count' }]);
  const { firstRow } = groupRows(readings, ['analyzer']);
  const named = Array.from(counted, (count, group): [string, number] => [textAt(column, firstRow[group]), count]);
  return new Map(named.filter(([name]) => name !== ''));
}

export function tableOfInstruments(rows: readonly InstrumentRow[]): Table {
  return tableOfRecords(
    instrumentsSchema,
    rows.map(({ analyzer, readings, units, from, o2, co2, verdict, reason, ...rest }) => ({
      analyzer,
      readings,
      o2_bias_pct: o2.value,
      o2_bias_pct_sd: o2.sd,
      co2_bias_pct: co2.value,
      co2_bias_pct_sd: co2.sd,
      verdict,
      units,
      read_from: from,
      reason,
      off_since: rest.offSince,
      changed_on: rest.changedOn,
      o2_bias_before_pct: rest.before,
      apparent_change_pct: rest.apparentChange,
      change_by_bias_pct: rest.changeByBias,
      drift_share: rest.driftShare,
    })),
  );
}
