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
const CLASS_BORDERS_PCT = [12.8, 14.6];
/** Beyond this O2 the quotient says nothing. */
const HIGHEST_O2_PCT = 15;

/**
 * Finds out, where a file does not say it, whether CO2 was measured or calculated from O2. A calculated CO2 is
 * CO2max (20.95 - O2) / 20.95 with one CO2max for each fuel that was chosen, so that all its readings agree on it within
 * the printed digits; a measured one scatters more. Decided for each file, analyzer and kind of fuel; few readings stay
 * unknown. Returns how many readings were named.
 */
export function findCo2Origin(columns: ReadingColumns): number {
  const o2 = columns.numbers.get('o2_pct')!;
  const co2 = columns.numbers.get('co2_pct')!;
  if (o2.values.length === 0 || co2.values.length === 0) return 0;
  const from = columns.texts.get('co2_from') ?? new GrowingTexts(wordMeaning('co2_from'));
  const analyzer = columns.texts.get('analyzer');
  const groups = new Map<string, number[]>();
  for (let file = 0; file < columns.files.length; file++)
    for (let row = columns.fileStarts[file]; row < columns.fileEnd(file); row++) {
      if (columns.status[row] !== ROW.accepted || from.code(row) >= 0) continue;
      if (!(o2.values[row] < HIGHEST_O2_PCT && co2.values[row] > 0)) continue;
      const kind = CLASS_BORDERS_PCT.findIndex((border) => impliedMax(o2.values[row], co2.values[row]) < border);
      const key = `${file}|${analyzer?.code(row) ?? -1}|${kind}`;
      const rows = groups.get(key);
      if (rows) rows.push(row);
      else groups.set(key, [row]);
    }
  let named = 0;
  for (const rows of groups.values()) {
    if (rows.length < LEAST_READINGS) continue;
    const code = from.codeOfCanonical(agree(o2.values, co2.values, rows) ? 'calculated' : 'measured');
    from.ensure(columns.rows, columns.rows);
    columns.texts.set('co2_from', from);
    for (const row of rows) from.codes[row] = code;
    named += rows.length;
  }
  return named;
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
