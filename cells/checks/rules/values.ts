import { co2FromO2, impliedCo2maxPct } from '../../../shared/combustion/flue-gas.ts';
import * as say from '../../../shared/messages/checks.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { fuelByCo2max } from '../fuel-by-co2max.ts';
import { shown } from '../shown.ts';

/** What one reading alone shows. Limits are common practice unless a physical one is named; each is in its unit. */
const HIGHEST_O2_PCT = 21.5;
const AIR_O2_PCT = 18;
/** Less CO2 than any burner leaves. */
const PURGE_CO2_PCT = 1;
/** Above CO2max by more than what composition and sensor explain. */
const OVER_CO2MAX = 1.03;
const SENSOR_CO2_PCT = 0.2;
/** Measured CO2 and O2 may differ by this much of CO2; beyond the second no pair of sensors is that wrong. */
const DISAGREE_CO2_PCT = 0.5;
const EXCLUDE_CO2_PCT = 2.5;
/** CO2max of two fuels that an analyzer tells apart differ by more than this. */
const OTHER_FUEL_PCT = 0.8;

export function checkValues(rows: CheckRows, report: Report): void {
  checkO2(rows, report);
  checkCo2(rows, report);
}

function checkO2(rows: CheckRows, report: Report): void {
  const [o2, co2, flue] = ['o2_pct', 'co2_pct', 'flue_C'].map((name) => rows.number(name));
  for (let row = 0; row < rows.count; row++) {
    if (o2[row] < 0 || o2[row] > HIGHEST_O2_PCT)
      report({ check: 'o2_out_of_range', row, columns: ['o2_pct'], sentence: () => say.o2OutOfRange(shown(o2[row])) });
    else if (o2[row] > AIR_O2_PCT || (co2[row] >= 0 && co2[row] < PURGE_CO2_PCT && !(o2[row] <= AIR_O2_PCT))) {
      const hot = flue[row] > 60 ? shown(flue[row], 0) : '';
      report({
        check: 'probe_in_air',
        row,
        columns: ['o2_pct', 'co2_pct'],
        sentence: () =>
          o2[row] > AIR_O2_PCT ? say.probeInAir(shown(o2[row]), hot) : say.purging(shown(co2[row]), hot),
        repair: () => ({ words: say.setAside(), corrections: [{ action: 'set_aside', row: rows.key(row) }] }),
      });
    }
  }
}

function checkCo2(rows: CheckRows, report: Report): void {
  const [o2, co2] = ['o2_pct', 'co2_pct'].map((name) => rows.number(name));
  for (let row = 0; row < rows.count; row++) {
    if (!(co2[row] > 0)) continue;
    const fuel = rows.fuel(row);
    if (!fuel) continue;
    if (co2[row] > fuel.co2maxPct * OVER_CO2MAX + SENSOR_CO2_PCT) {
      const sentence = (): string =>
        say.co2OverMax(shown(co2[row]), shown(fuel.co2maxPct), say.fuelWords(rows.fuelName(row)));
      report({ check: 'co2_over_max', row, columns: ['co2_pct'], sentence });
    } else if (o2[row] >= 0 && o2[row] < AIR_O2_PCT) checkPair(rows, row, co2FromO2(o2[row], fuel), report);
  }
}

/** O2 and CO2 of one row, which are to tell the same excess air. */
function checkPair(rows: CheckRows, row: number, expected: number, report: Report): void {
  const [o2, co2] = ['o2_pct', 'co2_pct'].map((name) => rows.number(name)[row]);
  const max = rows.fuel(row)?.co2maxPct ?? Number.NaN;
  const calculated = textAt(rows.text('co2_from'), row) === 'calculated';
  const gap = Math.abs(co2 - expected);
  const implied = impliedCo2maxPct(o2, co2);
  const columns = ['co2_pct'];
  if (calculated && Math.abs(implied - max) > OTHER_FUEL_PCT) {
    const [own, other] = [rows.fuelName(row), fuelByCo2max(implied)].map(say.fuelWords);
    report({
      check: 'other_fuel_chosen',
      row,
      columns,
      sentence: () => say.otherFuel(shown(implied), other, shown(max), own),
      gist: say.otherFuelGist(other, own),
    });
  } else if (gap > EXCLUDE_CO2_PCT)
    report({
      check: 'o2_and_co2_exclude_each_other',
      row,
      columns: ['o2_pct', 'co2_pct'],
      sentence: () => say.excludeEachOther(shown(o2), shown(co2), shown(expected)),
    });
  else if (!calculated && gap > DISAGREE_CO2_PCT)
    report({
      check: 'co2_disagrees',
      row,
      columns,
      sentence: () => say.co2Disagrees(shown(co2), shown(expected), shown(o2)),
    });
}
