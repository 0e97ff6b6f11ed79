import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { supplyPathSchema, supplyPointsSchema, supplySchema } from '../schemas/supply.ts';
import { normalQuantile } from '../statistics/normal.ts';
import type { Table } from '../table/table.ts';
import type { FittedSupply } from './fit-supply.ts';
import type { SupplyRow } from './judge-supply.ts';
import { levelAt } from './leaving-chance.ts';
import { type TableRecord, tableOfRecords } from './table-of-records.ts';

const NINETY_FIVE = normalQuantile(0.975);
const MONTH = DAYS_PER_YEAR / 12;

export function tableOfSupply(rows: readonly SupplyRow[]): Table {
  return tableOfRecords(
    supplySchema,
    rows.map((row) => ({
      unit: row.unit,
      readings_used: row.used,
      static_now_Pa: row.lastFixed,
      running_now_Pa: row.lastRunning,
      drop_now_Pa: row.dropNow,
      drop_slope_Pa_per_year: row.state.rate,
      slope_lower: row.slopeLower,
      slope_upper: row.slopeUpper,
      drop_limit_Pa: row.limit,
      probability_over_by_horizon: row.overBy,
      exceeds_on_50: row.exceedsOn,
      verdict: row.verdict,
      drop_now_sd_Pa: row.dropNowSd,
      growth_p_value: row.pValue,
      growth_false_discovery_rate: row.falseDiscoveryRate,
      last_read_on: row.lastDay,
      horizon_on: row.horizon,
      limit_source: row.limitSource,
      supply_min_Pa: row.minimum,
      supply_max_Pa: row.maximum,
      pattern: row.pattern,
      reason: row.reason,
    })),
  );
}

export function tableOfSupplyPoints(rows: readonly SupplyRow[]): Table {
  const records = rows.flatMap(({ unit, days, drop }) =>
    days.flatMap((day, i) => (Number.isFinite(drop[i]) ? [{ unit, day, drop_Pa: drop[i] }] : [])),
  );
  return tableOfRecords(supplyPointsSchema, records);
}

/** The level at every visit, and its projection month by month from the last reading to the horizon; one row of `rows` a lane. */
export function tableOfSupplyPath(rows: readonly SupplyRow[], { trace, scale }: FittedSupply): Table {
  const records: TableRecord[] = [];
  for (const [lane, { unit, used, state, lastDay, horizon }] of rows.entries()) {
    if (used === 0) continue;
    const add = (day: number, mean: number, sd: number): void => {
      records.push({ unit, day, level: mean, lower: mean - NINETY_FIVE * sd, upper: mean + NINETY_FIVE * sd });
    };
    for (let i = trace.starts[lane]; i < trace.starts[lane + 1]; i++)
      if (trace.day[i] < lastDay) add(trace.day[i], trace.level[i] * scale[lane], trace.sd[i] * scale[lane]);
    for (let day = lastDay; day < horizon + MONTH; day += MONTH) {
      const on = Math.min(day, horizon);
      const { mean, sd } = levelAt(state, Math.max(0, (on - lastDay) / DAYS_PER_YEAR));
      add(on, mean, sd);
      if (on === horizon) break;
    }
  }
  return tableOfRecords(supplyPathSchema, records);
}
