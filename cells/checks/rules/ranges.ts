import * as say from '../../../shared/messages/checks.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { shown } from '../shown.ts';

/** Common practice; each in its unit. */
const FLUE_C = [-40, 1200] as const;
const ROOM_C = [-50, 80] as const;
const NEGATIVE = ['co_ppm', 'co_air_free_ppm', 'nox_ppm', 'co2_pct', 'flame_signal_uA', 'heat_input_clocked_kW'];
const AMBIENT_CO_PPM = 9;
const CALIBRATED_DAYS = 400;
/** Flue gas leaves within a few kelvin of the return at the coldest; far below it the scale is wrong. */
const UNDER_WATER_K = 10;
/** A fire called high does not run below this rate, one called low not above that. */
const HIGH_RATE_PCT = 60;
const LOW_RATE_PCT = 60;

/** Temperatures, pressures and signs of one reading. */
export function checkRanges(rows: CheckRows, report: Report): void {
  checkTemperatures(rows, report);
  checkSigns(rows, report);
  checkInstrument(rows, report);
  checkRate(rows, report);
}

function checkTemperatures(rows: CheckRows, report: Report): void {
  const [flue, air, back, out] = ['flue_C', 'air_C', 'water_return_C', 'water_supply_C'].map((name) =>
    rows.number(name),
  );
  for (let row = 0; row < rows.count; row++) {
    const wild = outside(rows, row, 'flue_C', FLUE_C, report);
    if (outside(rows, row, 'air_C', ROOM_C, report) || wild) continue;
    if (flue[row] < air[row] - 2)
      report({
        check: 'flue_colder_than_air',
        row,
        columns: ['flue_C', 'air_C'],
        sentence: () => say.flueUnderAir(shown(flue[row], 0), shown(air[row], 0)),
      });
    // Where only the supply water is known, the gas is above it in all but condensing boilers, and never far below.
    const water = Number.isNaN(back[row]) ? out[row] - 30 : back[row];
    if (flue[row] < water - UNDER_WATER_K)
      report({
        check: 'flue_colder_than_water',
        row,
        columns: ['flue_C'],
        sentence: () =>
          Number.isNaN(back[row])
            ? say.flueUnderSupply(shown(flue[row], 0), shown(out[row], 0))
            : say.flueUnderWater(shown(flue[row], 0), shown(back[row], 0)),
      });
  }
}

function outside(
  rows: CheckRows,
  row: number,
  column: 'flue_C' | 'air_C',
  [from, to]: readonly [number, number],
  report: Report,
): boolean {
  const value = rows.number(column)[row];
  if (!(value < from || value > to)) return false;
  const what = column === 'flue_C' ? 'Flue temperature' : 'Air temperature';
  const sentence = (): string => say.temperatureOutOfRange(what, shown(value, 0), String(from), String(to));
  report({ check: 'temperature_out_of_range', row, columns: [column], sentence });
  return true;
}

function checkSigns(rows: CheckRows, report: Report): void {
  for (const name of NEGATIVE) {
    const values = rows.number(name);
    for (let row = 0; row < rows.count; row++)
      if (values[row] < 0)
        report({
          check: 'negative_value',
          row,
          columns: [name],
          sentence: () => say.negative(name, shown(values[row])),
        });
  }
  const [manifold, supply] = ['manifold_Pa', 'supply_running_Pa'].map((name) => rows.number(name));
  for (let row = 0; row < rows.count; row++)
    if (manifold[row] > supply[row] * 1.02 + 10)
      report({
        check: 'manifold_over_supply',
        row,
        columns: ['manifold_Pa'],
        sentence: () => say.manifoldOverSupply(shown(manifold[row], 0), shown(supply[row], 0)),
      });
}

function checkInstrument(rows: CheckRows, report: Report): void {
  const [ambient, calibrated] = ['co_ambient_ppm', 'calibrated_on'].map((name) => rows.number(name));
  for (let row = 0; row < rows.count; row++) {
    if (ambient[row] > AMBIENT_CO_PPM)
      report({
        check: 'ambient_co',
        row,
        columns: ['co_ambient_ppm'],
        sentence: () => say.ambientCo(shown(ambient[row], 0)),
      });
    const days = rows.taken[row] - calibrated[row];
    if (days > CALIBRATED_DAYS)
      report({
        check: 'calibration_overdue',
        row,
        columns: [],
        sentence: () => say.calibrationOverdue(shown(Math.floor(days), 0)),
      });
  }
}

/** A rate that does not go with the name of its fire: the burner modulated, or the fire is misnamed. */
function checkRate(rows: CheckRows, report: Report): void {
  const rate = rows.number('firing_rate_pct');
  const fire = rows.text('fire');
  for (let row = 0; row < rows.count; row++) {
    if (!(rate[row] >= 0)) continue;
    const name = textAt(fire, row);
    if ((name === 'high' && rate[row] < HIGH_RATE_PCT) || (name === 'low' && rate[row] > LOW_RATE_PCT))
      report({
        check: 'fire_and_rate_disagree',
        row,
        columns: ['fire', 'firing_rate_pct'],
        sentence: () => say.rateDisagrees(name, shown(rate[row], 0)),
      });
  }
}
