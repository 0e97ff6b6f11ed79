import { co2FromO2, impliedCo2maxPct } from '../../../shared/combustion/flue-gas.ts';
import * as say from '../../../shared/messages/checks.ts';
import { textAt } from '../../../shared/table/columns.ts';
import type { CheckRows } from '../check-rows.ts';
import type { Report } from '../finding.ts';
import { shown } from '../shown.ts';

/** What one reading alone shows. Limits are common practice unless a physical one is named; each is in its unit. */
const HIGHEST_O2_PCT = 21.5;
const AIR_O2_PCT = 18;
/** Above CO2max by more than what composition and sensor explain. */
const OVER_CO2MAX = 1.03;
const SENSOR_CO2_PCT = 0.2;
/** Measured CO2 and O2 may differ by this much of CO2; beyond the second no pair of sensors is that wrong. */
const DISAGREE_CO2_PCT = 0.5;
const EXCLUDE_CO2_PCT = 2.5;
/** CO2max of two fuels that an analyzer tells apart differ by more than this. */
const OTHER_FUEL_PCT = 0.8;
const FLUE_C = [-40, 1200] as const;
const ROOM_C = [-50, 80] as const;
const NEGATIVE = ['co_ppm', 'co_air_free_ppm', 'nox_ppm', 'co2_pct', 'flame_signal_uA', 'heat_input_clocked_kW'];
const AMBIENT_CO_PPM = 9;
const CALIBRATED_DAYS = 400;

export function checkValues(rows: CheckRows, report: Report): void {
  checkO2(rows, report);
  checkCo2(rows, report);
  checkTemperatures(rows, report);
  checkSigns(rows, report);
  checkInstrument(rows, report);
}

function checkO2(rows: CheckRows, report: Report): void {
  const o2 = rows.number('o2_pct');
  const flue = rows.number('flue_C');
  for (let row = 0; row < rows.count; row++) {
    if (o2[row] < 0 || o2[row] > HIGHEST_O2_PCT)
      report('o2_out_of_range', row, ['o2_pct'], say.o2OutOfRange(shown(o2[row])));
    else if (o2[row] > AIR_O2_PCT)
      report(
        'probe_in_air',
        row,
        ['o2_pct'],
        say.probeInAir(shown(o2[row]), flue[row] > 60 ? shown(flue[row], 0) : ''),
      );
  }
}

function checkCo2(rows: CheckRows, report: Report): void {
  const o2 = rows.number('o2_pct');
  const co2 = rows.number('co2_pct');
  const from = rows.text('co2_from');
  for (let row = 0; row < rows.count; row++) {
    if (!(co2[row] > 0)) continue;
    const fuel = rows.fuel(row);
    if (!fuel) continue;
    const name = rows.fuelName(row).replaceAll('_', ' ');
    if (co2[row] > fuel.co2maxPct * OVER_CO2MAX + SENSOR_CO2_PCT) {
      report('co2_over_max', row, ['co2_pct'], say.co2OverMax(shown(co2[row]), shown(fuel.co2maxPct), name));
      continue;
    }
    if (!(o2[row] >= 0 && o2[row] < AIR_O2_PCT)) continue;
    const expected = co2FromO2(o2[row], fuel);
    const gap = Math.abs(co2[row] - expected);
    const implied = impliedCo2maxPct(o2[row], co2[row]);
    const calculated = textAt(from, row) === 'calculated';
    if (calculated && Math.abs(implied - fuel.co2maxPct) > OTHER_FUEL_PCT)
      report('other_fuel_chosen', row, ['co2_pct'], say.otherFuel(shown(implied), shown(fuel.co2maxPct), name));
    else if (gap > EXCLUDE_CO2_PCT)
      report(
        'o2_and_co2_exclude_each_other',
        row,
        ['o2_pct', 'co2_pct'],
        say.excludeEachOther(shown(o2[row]), shown(co2[row]), shown(expected)),
      );
    else if (!calculated && gap > DISAGREE_CO2_PCT)
      report('co2_disagrees', row, ['co2_pct'], say.co2Disagrees(shown(co2[row]), shown(expected), shown(o2[row])));
  }
}

function checkTemperatures(rows: CheckRows, report: Report): void {
  const flue = rows.number('flue_C');
  const air = rows.number('air_C');
  const water = rows.number('water_return_C');
  for (let row = 0; row < rows.count; row++) {
    const wild = flue[row] < FLUE_C[0] || flue[row] > FLUE_C[1];
    if (wild)
      report(
        'temperature_out_of_range',
        row,
        ['flue_C'],
        say.temperatureOutOfRange('Flue temperature', shown(flue[row], 0), String(FLUE_C[0]), String(FLUE_C[1])),
      );
    if (air[row] < ROOM_C[0] || air[row] > ROOM_C[1])
      report(
        'temperature_out_of_range',
        row,
        ['air_C'],
        say.temperatureOutOfRange('Air temperature', shown(air[row], 0), String(ROOM_C[0]), String(ROOM_C[1])),
      );
    else if (!wild && flue[row] < air[row] - 2)
      report(
        'flue_colder_than_air',
        row,
        ['flue_C', 'air_C'],
        say.flueUnderAir(shown(flue[row], 0), shown(air[row], 0)),
      );
    // Flue gas leaves within a few kelvin of the return at the coldest; far below it the scale is wrong.
    if (!wild && flue[row] < water[row] - 10)
      report('flue_colder_than_water', row, ['flue_C'], say.flueUnderWater(shown(flue[row], 0), shown(water[row], 0)));
  }
}

function checkSigns(rows: CheckRows, report: Report): void {
  for (const name of NEGATIVE) {
    const values = rows.number(name);
    for (let row = 0; row < rows.count; row++)
      if (values[row] < 0) report('negative_value', row, [name], say.negative(name, shown(values[row])));
  }
  const manifold = rows.number('manifold_Pa');
  const supply = rows.number('supply_running_Pa');
  for (let row = 0; row < rows.count; row++)
    if (manifold[row] > supply[row] * 1.02 + 10)
      report(
        'manifold_over_supply',
        row,
        ['manifold_Pa'],
        say.manifoldOverSupply(shown(manifold[row], 0), shown(supply[row], 0)),
      );
}

function checkInstrument(rows: CheckRows, report: Report): void {
  const ambient = rows.number('co_ambient_ppm');
  const calibrated = rows.number('calibrated_on');
  for (let row = 0; row < rows.count; row++) {
    if (ambient[row] > AMBIENT_CO_PPM)
      report('ambient_co', row, ['co_ambient_ppm'], say.ambientCo(shown(ambient[row], 0)));
    const days = rows.taken[row] - calibrated[row];
    if (days > CALIBRATED_DAYS) report('calibration_overdue', row, [], say.calibrationOverdue(shown(days, 0)));
  }
}
