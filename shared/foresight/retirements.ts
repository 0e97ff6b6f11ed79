import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { eventDays } from './series-breaks.ts';

/** Units retired by the as-of day, by the events or the register. */
export function retirements(
  { units, events }: { readonly units: Table | undefined; readonly events: Table | undefined },
  asOf: number,
): Map<string, number> {
  const retired = new Map([...eventDays(events, ['retired'], asOf)].map(([unit, days]) => [unit, days[0]]));
  if (!units) return retired;
  const unit = textsOf(units, 'unit');
  const on = numbersOf(units, 'retired_on');
  for (let row = 0; row < units.rows; row++) if (on[row] <= asOf) retired.set(textAt(unit, row), on[row]);
  return retired;
}
