import { excessAirFromO2 } from '../../../shared/combustion/flue-gas.ts';
import { REGULATORY_OXYGEN_PCT } from '../../../shared/combustion/oxygen-in-air.ts';
import * as say from '../../../shared/messages/checks.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { shown } from '../shown.ts';

/** The instrument's own derived columns, recomputed: a mismatch names the wrong fuel, unit or basis. */
export function checkChecksums(rows: CheckRows, report: Report): void {
  checkExcessAir(rows, report);
  checkAirFree(rows, report);
  checkEfficiency(rows, report);
}

/** O2 printed to 0.1 moves excess air by about 1 point at 5 % and 2 at 9 %; the rest is the analyzer's fuel data. */
const EXCESS_AIR_PCT = 5;
const EXCESS_AIR_SHARE = 0.15;
const HIGHEST_O2_PCT = 15;

function checkExcessAir(rows: CheckRows, report: Report): void {
  const printed = rows.number('excess_air_printed_pct');
  const o2 = rows.number('o2_pct');
  for (let row = 0; row < rows.count; row++) {
    const fuel = rows.fuel(row);
    if (!fuel || !(printed[row] >= 0) || !(o2[row] < HIGHEST_O2_PCT)) continue;
    const computed = 100 * excessAirFromO2(o2[row], fuel);
    const reach = Math.max(EXCESS_AIR_PCT, EXCESS_AIR_SHARE * computed);
    if (Math.abs(printed[row] - computed) <= reach) continue;
    const ratio = printed[row] >= 1 && printed[row] < 4 && Math.abs(100 * (printed[row] - 1) - computed) <= reach;
    if (ratio)
      report(
        'air_ratio_as_percent',
        row,
        ['excess_air_printed_pct'],
        say.airRatio(shown(printed[row], 2), shown(computed, 0)),
      );
    else
      report(
        'excess_air_mismatch',
        row,
        ['excess_air_printed_pct'],
        say.excessAirMismatch(shown(printed[row], 0), shown(computed, 0)),
      );
  }
}

const AIR_FREE_SHARE = 0.15;
const AIR_FREE_PPM = 8;

function checkAirFree(rows: CheckRows, report: Report): void {
  const airFree = rows.number('co_air_free_ppm');
  const raw = rows.number('co_ppm');
  const o2 = rows.number('o2_pct');
  const [rawBound, freeBound] = [rows.bounds('co_ppm'), rows.bounds('co_air_free_ppm')];
  for (let row = 0; row < rows.count; row++) {
    if (
      !(airFree[row] >= 0 && raw[row] >= 0 && o2[row] < HIGHEST_O2_PCT) ||
      rawBound[row] !== 0 ||
      freeBound[row] !== 0
    )
      continue;
    const factor = REGULATORY_OXYGEN_PCT / (REGULATORY_OXYGEN_PCT - o2[row]);
    const computed = raw[row] * factor;
    const near = (value: number): boolean =>
      Math.abs(airFree[row] - value) <= Math.max(AIR_FREE_PPM, AIR_FREE_SHARE * value);
    if (near(computed)) continue;
    const sentence = near(raw[row])
      ? say.airFreeIsRaw
      : near(computed * factor)
        ? say.airFreeTwice
        : say.airFreeMismatch;
    report('air_free_mismatch', row, ['co_air_free_ppm'], sentence(shown(airFree[row], 0), shown(computed, 0)));
  }
}

/**
 * Siegert's flue loss on net basis, % = (flue - air) (A / (21 - O2) + B), with the constants of the German ordinance on
 * small firing installations (source `siegert1BImSchV`); above the dew point only.
 */
const SIEGERT: readonly (readonly [below: number, a: number, b: number])[] = [
  [12.8, 0.66, 0.009],
  [14.6, 0.63, 0.008],
  [Number.POSITIVE_INFINITY, 0.68, 0.007],
];
const LEAST_FLUE_C = 70;
/** Two efficiencies within this are the same: O2 to 0.3, temperatures to 3 K, another fuel table. */
const EFFICIENCY_PCT = 1.8;

/** gross, net or neither, of each row's printed efficiency; '' where it cannot be told. */
function checkEfficiency(rows: CheckRows, report: Report): void {
  const printed = rows.number('efficiency_printed_pct');
  const [o2, flue, air] = ['o2_pct', 'flue_C', 'air_C'].map((name) => rows.number(name));
  for (const [from, to] of rows.byUnit) {
    const bases: { row: number; basis: 'gross' | 'net' }[] = [];
    for (let row = from; row < to; row++) {
      const fuel = rows.fuel(row);
      if (
        !fuel ||
        !(printed[row] > 0 && flue[row] >= LEAST_FLUE_C && o2[row] < HIGHEST_O2_PCT) ||
        Number.isNaN(air[row])
      )
        continue;
      const [, a, b] = SIEGERT.find(([below]) => fuel.co2maxPct < below) ?? SIEGERT[0];
      const net = 100 - (flue[row] - air[row]) * (a / (21 - o2[row]) + b);
      // The latent heat of all water leaves with the gas.
      const gross = net * fuel.netOverGross;
      const isNet = Math.abs(printed[row] - net) <= EFFICIENCY_PCT;
      const isGross = Math.abs(printed[row] - gross) <= EFFICIENCY_PCT;
      if (isNet !== isGross) bases.push({ row, basis: isNet ? 'net' : 'gross' });
      else if (!isNet)
        report(
          'efficiency_mismatch',
          row,
          ['efficiency_printed_pct'],
          say.efficiencyMismatch(shown(printed[row]), shown(gross), shown(net)),
        );
    }
    const nets = bases.filter(({ basis }) => basis === 'net').length;
    if (nets === 0 || nets === bases.length || bases.length < 4) continue;
    const usual = nets * 2 >= bases.length ? 'net' : 'gross';
    for (const { row, basis } of bases)
      if (basis !== usual)
        report(
          'efficiency_basis',
          row,
          ['efficiency_printed_pct'],
          say.efficiencyBasis(shown(printed[row]), basis, usual),
        );
  }
}
