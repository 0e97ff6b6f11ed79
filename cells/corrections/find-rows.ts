import type { Correction, RowKey } from '../../shared/corrections/correction.ts';
import { plainUnit, rowKeyText } from '../../shared/corrections/row-key-text.ts';
import { writeIsoDate } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** Finds rows of the imported table by their keys. Only rows of units that some correction names are looked at. */
export class RowFinder {
  readonly #rows = new Map<string, number[]>();

  constructor(accepted: Table, corrections: readonly Correction[]) {
    const named = new Set(
      corrections.flatMap((correction) => ('row' in correction ? [plainUnit(correction.row.unit)] : [])),
    );
    if (named.size === 0) return;
    const [unit, fire, state, fuel] = ['unit', 'fire', 'state', 'fuel'].map((name) => textsOf(accepted, name));
    const taken = numbersOf(accepted, 'taken_at');
    const wanted = unit.levels.map((level) => named.has(plainUnit(level)));
    for (let row = 0; row < accepted.rows; row++) {
      if (!wanted[unit.codes[row]]) continue;
      const text = rowKeyText({
        unit: textAt(unit, row),
        taken_at: writeIsoDate(taken[row]),
        fire: textAt(fire, row),
        state: textAt(state, row),
        fuel: textAt(fuel, row),
      });
      const rows = this.#rows.get(text);
      if (rows) rows.push(row);
      else this.#rows.set(text, [row]);
    }
  }

  /** The row's number, -1 where there is none. */
  find(key: RowKey): number {
    return this.#rows.get(rowKeyText(key))?.[key.nth - 1] ?? -1;
  }
}
