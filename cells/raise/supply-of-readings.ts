import { dropLimitOf, supplyLimitsOf } from '../../shared/foresight/supply-limits.ts';
import { readSupply } from '../../shared/foresight/supply-readings.ts';
import { tableOfRecords } from '../../shared/foresight/table-of-records.ts';
import { exceeds } from '../../shared/limits/supply-verdicts.ts';
import { supplySchema } from '../../shared/schemas/supply.ts';
import { numberColumn, numbersOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/**
 * The gas supply by its last readings alone, for when nothing has been fitted: the columns of the supply table that need
 * no fit, the drop being that of the last visit as it was read. A drop that is not over its limit is unknown, since how it
 * grows is.
 */
export function supplyOfReadings(
  readings: Table,
  units: Table | undefined,
  supplyLimits: Table | undefined,
  asOf: number,
): Table {
  const [fixed, running] = [numbersOf(readings, 'supply_static_Pa'), numbersOf(readings, 'supply_running_Pa')];
  const drop = fixed.map((pressure, row) => pressure - running[row]);
  const derived = {
    rows: readings.rows,
    columns: new Map([...readings.columns, ['supply_drop_Pa', numberColumn('Pa', drop)] as const]),
  };
  const limits = supplyLimitsOf(supplyLimits);
  const records = readSupply({ readings, derived, units }, asOf, 0).map((unit) => {
    const last = unit.drop.findLastIndex(Number.isFinite);
    const { limit, limitSource } = dropLimitOf(unit, limits.get(unit.unit));
    const plate = limits.get(unit.unit);
    return {
      unit: unit.unit,
      readings_used: unit.drop.filter(Number.isFinite).length,
      static_now_Pa: unit.lastFixed,
      running_now_Pa: unit.lastRunning,
      drop_now_Pa: unit.drop[last] ?? Number.NaN,
      drop_limit_Pa: limit,
      limit_source: limitSource,
      verdict: exceeds(unit.drop[last] ?? Number.NaN, limit) ? 'over' : 'unknown',
      last_read_on: unit.days[last] ?? unit.days.at(-1) ?? Number.NaN,
      supply_min_Pa: plate?.minimum ?? Number.NaN,
      supply_max_Pa: plate?.maximum ?? Number.NaN,
    };
  });
  return tableOfRecords(supplySchema, records);
}
