import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';

/** Other hardware from then on: what was read before says nothing about the level or rate after. */
export const NEW_SERIES_EVENTS: readonly string[] = ['replaced', 'converted', 'gas_valve', 'burner_parts'];

/** Days of the given events by unit, ascending, none after `asOf`. */
export function eventDays(events: Table | undefined, kinds: readonly string[], asOf: number): Map<string, number[]> {
  const days = new Map<string, number[]>();
  if (!events) return days;
  const unit = textsOf(events, 'unit');
  const kind = textsOf(events, 'event');
  const on = numbersOf(events, 'on');
  for (let row = 0; row < events.rows; row++) {
    if (!kinds.includes(textAt(kind, row)) || !(on[row] <= asOf)) continue;
    const name = textAt(unit, row);
    const known = days.get(name);
    if (known) known.push(Math.floor(on[row]));
    else days.set(name, [Math.floor(on[row])]);
  }
  for (const list of days.values()) list.sort((a, b) => a - b);
  return days;
}
