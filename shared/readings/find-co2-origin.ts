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
  let named = 0;
  for (let file = 0; file < columns.files.length; file++) {
    const start = columns.fileStarts[file];
    const keys = groupKeys(columns, o2, co2, from.codes, start, columns.fileEnd(file));
    const { counts, samples } = sampled(keys, start);
    const codes = counts.map((count, key) =>
      count < LEAST_READINGS ? -1 : from.codeOfCanonical(agree(o2, co2, samples[key]) ? 'calculated' : 'measured'),
    );
    if (codes.every((code) => code < 0)) continue;
    from.ensure(columns.rows, columns.rows);
    columns.texts.set('co2_from', from);
    for (let i = 0; i < keys.length; i++)
      if (keys[i] >= 0 && codes[keys[i]] >= 0) {
        from.codes[start + i] = codes[keys[i]];
        named++;
      }
  }
  return named;
}

/** Per row of a file its analyzer and kind of fuel as one number; -1 where nothing is to be found out. */
function groupKeys(
  { texts, status }: ReadingColumns,
  o2: Float64Array,
  co2: Float64Array,
  said: Int32Array,
  start: number,
  end: number,
): Int32Array {
  const analyzers = texts.get('analyzer')?.codes ?? new Int32Array(0);
  const keys = new Int32Array(end - start).fill(-1);
  for (let row = start; row < end; row++) {
    if (!(o2[row] < HIGHEST_O2_PCT && co2[row] > 0) || status[row] !== ROW.accepted) continue;
    if (row < said.length && said[row] >= 0) continue;
    const analyzer = row < analyzers.length ? analyzers[row] : -1;
    keys[row - start] = (analyzer + 1) * 3 + fuelKind(impliedMax(o2[row], co2[row]));
  }
  return keys;
}

/** How many rows have each key, and a few hundred of them spread over all, which tell as much as a million. */
function sampled(keys: Int32Array, start: number): { counts: readonly number[]; samples: readonly number[][] } {
  let highest = -1;
  for (let i = 0; i < keys.length; i++) if (keys[i] > highest) highest = keys[i];
  const counts = new Int32Array(highest + 1);
  for (let i = 0; i < keys.length; i++) if (keys[i] >= 0) counts[keys[i]]++;
  /** Rows until the next one that is looked at. */
  const until = new Int32Array(highest + 1);
  const samples: number[][] = Array.from(counts, () => []);
  for (let i = 0; i < keys.length; i++) {
    const key = keys[i];
    if (key < 0) continue;
    if (until[key] === 0) {
      samples[key].push(start + i);
      until[key] = Math.ceil(counts[key] / MOST_LOOKED_AT);
    }
    until[key]--;
  }
  return { counts: Array.from(counts), samples };
}

const fuelKind = (max: number): number => (max < GAS_TO_LPG_PCT ? 0 : max < LPG_TO_OIL_PCT ? 1 : 2);

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
