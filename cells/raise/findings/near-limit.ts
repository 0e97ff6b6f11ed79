import { guardedVerdict } from '../../../shared/limits/guarded-verdict.ts';
import { coNearLimit } from '../../../shared/messages/raise-remarks.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import type { Fleet } from '../fleet.ts';
import type { RaiseParameters } from '../parameters.ts';

const COLUMN = { air_free: 'co_air_free_ppm', at_3pct_o2: 'co_at_3pct_o2_ppm', as_measured: '' } as const;
/** So many are named; the others are counted. */
const NAMED = 5;

/**
 * Fires whose last CO is below the limit, but by less than its guard band: they are not raised, since below is below,
 * and they are not clearly within either. One sentence; '' where there is none or CO is judged without its uncertainty.
 */
export function coCloseToLimit(
  { readings }: Fleet,
  { coLimitPpm, coBasis }: RaiseParameters,
  skip: (unit: string) => boolean,
): string {
  const column = COLUMN[coBasis];
  if (column === '') return '';
  const [value, sd] = [readings.number(column), readings.number(`${column}_sd`)];
  const fire = readings.text('fire');
  const close: { unit: string; row: number }[] = [];
  for (const unit of readings.byUnit.keys()) {
    if (skip(unit)) continue;
    for (const lane of readings.lanesOf(unit)) {
      const row = lane.findLast((candidate) => Number.isFinite(value[candidate]));
      if (row === undefined) continue;
      if (sd[row] > 0 && guardedVerdict(value[row], sd[row], Number.NaN, coLimitPpm) === 'within_by_less')
        close.push({ unit, row });
    }
  }
  close.sort((a, b) => value[b.row] - value[a.row]);
  const named = close.slice(0, NAMED).map(({ unit, row }) => ({
    unit,
    fire: fire(row),
    ppm: value[row],
    sd: sd[row],
    day: writeDay(readings.day[row]),
  }));
  return coNearLimit(named, close.length, coLimitPpm, coBasis);
}
