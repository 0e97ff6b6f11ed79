import { excessAirFromO2 } from '../../../shared/combustion/flue-gas.ts';
import { REGULATORY_OXYGEN_PCT } from '../../../shared/combustion/oxygen-in-air.ts';
import * as say from '../../../shared/messages/checks.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { shown } from '../shown.ts';

/** Columns that the instrument derives itself, recomputed: a mismatch names the wrong fuel, unit or basis. */
export function checkChecksums(rows: CheckRows, report: Report): void {
  checkExcessAir(rows, report);
  checkAirFree(rows, report);
}

/** O2 printed to 0.1 moves excess air by about 1 point at 5 % and 2 at 9 %; the rest is the analyzer's fuel data. */
const EXCESS_AIR_PCT = 5;
const EXCESS_AIR_SHARE = 0.15;
const HIGHEST_O2_PCT = 15;

function checkExcessAir(rows: CheckRows, report: Report): void {
  const [printed, o2] = ['excess_air_printed_pct', 'o2_pct'].map((name) => rows.number(name));
  const columns = ['excess_air_printed_pct'];
  for (let row = 0; row < rows.count; row++) {
    const fuel = rows.fuel(row);
    if (!fuel || !(printed[row] >= 0) || !(o2[row] < HIGHEST_O2_PCT)) continue;
    const computed = 100 * excessAirFromO2(o2[row], fuel);
    const reach = Math.max(EXCESS_AIR_PCT, EXCESS_AIR_SHARE * computed);
    if (Math.abs(printed[row] - computed) <= reach) continue;
    const ratio = printed[row] >= 1 && printed[row] < 4 && Math.abs(100 * (printed[row] - 1) - computed) <= reach;
    report(
      ratio
        ? {
            check: 'air_ratio_as_percent',
            row,
            columns,
            sentence: () => say.airRatio(shown(printed[row], 2), shown(computed, 0)),
            gist: say.airRatioGist(),
          }
        : {
            check: 'excess_air_mismatch',
            row,
            columns,
            sentence: () => say.excessAirMismatch(shown(printed[row], 0), shown(computed, 0)),
          },
    );
  }
}

/** O2 printed to 0.1 and oxygen in air of 20.9, 20.95 or 21 % move it by 3 % at most; CO at 3 % O2 is 14 % below. */
const AIR_FREE_SHARE = 0.08;
const AIR_FREE_PPM = 8;
/** Oxygen to which rules for boilers correct CO, %. */
const REFERENCE_O2_PCT = 3;

function checkAirFree(rows: CheckRows, report: Report): void {
  const [airFree, raw, o2] = ['co_air_free_ppm', 'co_ppm', 'o2_pct'].map((name) => rows.number(name));
  const [rawBound, freeBound] = [rows.bounds('co_ppm'), rows.bounds('co_air_free_ppm')];
  for (let row = 0; row < rows.count; row++) {
    const exact = rawBound[row] === 0 && freeBound[row] === 0;
    if (!(exact && airFree[row] >= 0 && raw[row] >= 0 && o2[row] >= 0 && o2[row] < HIGHEST_O2_PCT)) continue;
    const factor = REGULATORY_OXYGEN_PCT / (REGULATORY_OXYGEN_PCT - o2[row]);
    const computed = raw[row] * factor;
    if (isNear(airFree[row], computed)) continue;
    const { sentence, gist } = airFreeFault(airFree[row], raw[row], factor);
    report({
      check: 'air_free_mismatch',
      row,
      columns: ['co_air_free_ppm'],
      sentence: () => sentence(shown(airFree[row], 0), shown(computed, 0)),
      gist: gist(),
    });
  }
}

const isNear = (found: number, value: number): boolean =>
  Math.abs(found - value) <= Math.max(AIR_FREE_PPM, AIR_FREE_SHARE * value);

/** Which other number stands in the column of air-free CO. */
function airFreeFault(
  found: number,
  raw: number,
  factor: number,
): { sentence: (found: string, computed: string) => string; gist: () => string } {
  const atReference = (raw * factor * (REGULATORY_OXYGEN_PCT - REFERENCE_O2_PCT)) / REGULATORY_OXYGEN_PCT;
  const off = (value: number): number => Math.abs(found - value);
  if (isNear(found, raw * factor * factor)) return { sentence: say.airFreeTwice, gist: say.airFreeTwiceGist };
  const closerToRaw = off(raw) <= off(atReference);
  if (closerToRaw && isNear(found, raw)) return { sentence: say.airFreeIsRaw, gist: say.airFreeIsRawGist };
  if (isNear(found, atReference)) return { sentence: say.airFreeAtThree, gist: say.airFreeAtThreeGist };
  return { sentence: say.airFreeMismatch, gist: say.airFreeMismatchGist };
}
