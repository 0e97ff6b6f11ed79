import { GrowingTexts } from './growing-columns.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { wordMeaning } from './word-meaning.ts';

/** O2 in dry air by which analyzers calculate CO2, %. */
const AIR_O2_PCT = 20.95;
/** Half of the last printed digit of both numbers, and a little for analyzers that calculate with 20.9 or 21 %. */
const HALF_DIGIT_PCT = 0.05;
const SLACK_PCT = 0.04;
/** Fewer readings agree by chance; more than this share may be mistyped. */
const LEAST_READINGS = 5;
const STRAY_SHARE = 0.02;
/** Implied CO2max below and above which fuels part: gas, propane and its kin, oil (stoichiometry). */
const GAS_TO_LPG_PCT = 12.8;
const LPG_TO_OIL_PCT = 14.6;
const MOST_LOOKED_AT = 400;
/** Beyond this O2 the quotient says nothing. */
const HIGHEST_O2_PCT = 15;

/**
 * Finds out, where a file does not say it, whether CO2 was measured or calculated from O2. A calculated CO2 is
 * CO2max (20.95 - O2) / 20.95 with one CO2max for each fuel that was chosen, so that all its readings agree on it within
 * the printed digits; a measured one scatters more. Decided for each file, analyzer and kind of fuel; few readings stay
 * unknown. Returns how many readings were named.
 */
export function findCo2Origin(columns: ReadingColumns): number {
  const o2 = columns.numbers.get('o2_pct')!.values;
  const co2 = columns.numbers.get('co2_pct')!.values;
  if (o2.length === 0 || co2.length === 0) return 0;
  const from = columns.texts.get('co2_from') ?? new GrowingTexts(wordMeaning('co2_from'));
  const analyzers = columns.texts.get('analyzer')?.codes ?? new Int32Array(0);
  const { status } = columns;
  let named = 0;
  for (let file = 0; file < columns.files.length; file++) {
    /** By analyzer and kind of fuel. */
    const groups: number[][] = [];
    const said = from.codes;
    for (let row = columns.fileStarts[file]; row < columns.fileEnd(file); row++) {
      if (!(o2[row] < HIGHEST_O2_PCT && co2[row] > 0) || status[row] !== ROW.accepted) continue;
      if (row < said.length && said[row] >= 0) continue;
      const key = ((row < analyzers.length ? analyzers[row] : -1) + 1) * 3 + fuelKind(impliedMax(o2[row], co2[row]));
      const rows = groups[key];
      if (rows) rows.push(row);
      else groups[key] = [row];
    }
    for (const rows of groups) {
      if (rows === undefined || rows.length < LEAST_READINGS) continue;
      const code = from.codeOfCanonical(agree(o2, co2, evenSample(rows)) ? 'calculated' : 'measured');
      from.ensure(columns.rows, columns.rows);
      columns.texts.set('co2_from', from);
      for (const row of rows) from.codes[row] = code;
      named += rows.length;
    }
  }
  return named;
}

const fuelKind = (max: number): number => (max < GAS_TO_LPG_PCT ? 0 : max < LPG_TO_OIL_PCT ? 1 : 2);

/** A few hundred readings spread over all tell as much as a million. */
function evenSample(rows: readonly number[]): readonly number[] {
  const step = Math.ceil(rows.length / MOST_LOOKED_AT);
  return step === 1 ? rows : rows.filter((_, i) => i % step === 0);
}

const impliedMax = (o2: number, co2: number): number => (AIR_O2_PCT * co2) / (AIR_O2_PCT - o2);

/** Whether one CO2max lies within the digits of all readings but a stray few. */
function agree(o2: Float64Array, co2: Float64Array, rows: readonly number[]): boolean {
  const implied = rows.map((row) => impliedMax(o2[row], co2[row])).sort((a, b) => a - b);
  const middle = implied[implied.length >> 1];
  let stray = 0;
  for (const row of rows) {
    const reach = (HALF_DIGIT_PCT * (AIR_O2_PCT + middle)) / (AIR_O2_PCT - o2[row]) + SLACK_PCT;
    if (Math.abs(impliedMax(o2[row], co2[row]) - middle) > reach) stray++;
  }
  return stray <= STRAY_SHARE * rows.length;
}
