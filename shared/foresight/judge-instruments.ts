import { biasOf, confoundedBias, constantSince, noneCompared, withinBias } from '../messages/foresight.ts';
import { writeDay } from '../quantities/dates.ts';
import { instrumentsSchema } from '../schemas/instruments.ts';
import { normalCdf } from '../statistics/normal.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { groupRows, rollUp } from '../table/verbs.ts';
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
/** The readings have told nothing of a bias that is still this share as uncertain as before them. */
const TOLD_NOTHING = 0.9;

/** Every analyzer that a reading names, sorted by name. */
export function judgeInstruments(readings: Table, analyzers: Table, tolerancePct: number): InstrumentRow[] {
  const counted = countReadings(readings);
  const name = textsOf(analyzers, 'analyzer');
  const column = (key: string): Float64Array => numbersOf(analyzers, key);
  const [units, compared, o2, o2Sd, o2Prior, co2, co2Sd, co2Prior] = [
    'units',
    'compared',
    'o2_bias_pct',
    'o2_bias_pct_sd',
    'o2_prior_sd',
    'co2_bias_pct',
    'co2_bias_pct_sd',
    'co2_prior_sd',
  ].map(column);
  const from = numbersOf(analyzers, 'read_from');
  const fitted = new Map(Array.from({ length: analyzers.rows }, (_, row) => [textAt(name, row), row]));
  return [...counted.keys()].sort().map((analyzer) => {
    const row = fitted.get(analyzer) ?? -1;
    const bias = (value: Float64Array, sd: Float64Array, prior: Float64Array): Bias =>
      row < 0
        ? { value: Number.NaN, sd: Number.NaN, priorSd: Number.NaN }
        : { value: value[row], sd: sd[row], priorSd: prior[row] };
    const entry = { o2: bias(o2, o2Sd, o2Prior), co2: bias(co2, co2Sd, co2Prior) };
    return {
      analyzer,
      readings: counted.get(analyzer) ?? 0,
      units: row < 0 ? 0 : units[row],
      from: row < 0 ? Number.NaN : from[row],
      ...entry,
      ...verdictOn(entry.o2, entry.co2, row < 0 ? 0 : compared[row], row < 0 ? '' : writeDay(from[row]), tolerancePct),
    };
  });
}

function verdictOn(
  o2: Bias,
  co2: Bias,
  compared: number,
  since: string,
  tolerance: number,
): Pick<InstrumentRow, 'verdict' | 'reason'> {
  const known = [o2, co2].filter(({ value, sd }) => Number.isFinite(value) && Number.isFinite(sd));
  if (known.length === 0) return { verdict: 'unknown', reason: noneCompared() };
  if (compared < ENOUGH_COMPARED || known.every(({ sd, priorSd }) => sd > TOLD_NOTHING * priorSd))
    return { verdict: 'confounded', reason: confoundedBias() };
  const biased = (bias: Bias): boolean =>
    Math.abs(bias.value) > tolerance && normalCdf(Math.abs(bias.value) / bias.sd) > CERTAINTY;
  const told = (quantity: string, { value, sd }: Bias): string =>
    biasOf(quantity, `${value > 0 ? '+' : ''}${value.toFixed(2)}`, sd.toFixed(2));
  const reasons = [biased(o2) ? told('O2', o2) : '', biased(co2) ? told('CO2', co2) : ''].filter((text) => text !== '');
  return reasons.length > 0
    ? { verdict: 'biased', reason: `${reasons.join('; ')}${since === '' ? '' : constantSince(since)}` }
    : { verdict: 'within', reason: withinBias() };
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
    rows.map(({ analyzer, readings, units, from, o2, co2, verdict, reason }) => ({
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
    })),
  );
}
