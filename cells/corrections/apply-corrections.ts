import { correctedValue } from '../../shared/corrections/corrected-value.ts';
import type { Correction } from '../../shared/corrections/correction.ts';
import { byEffect } from '../../shared/corrections/order-of-effect.ts';
import { plainUnit } from '../../shared/corrections/row-key-text.ts';
import { writeDay, writeIsoDate } from '../../shared/quantities/dates.ts';
import { twelveDigits } from '../../shared/quantities/twelve-digits.ts';
import { numbersOf } from '../../shared/table/columns.ts';
import { makeTable, type Table } from '../../shared/table/table.ts';
import { ColumnEditor } from './column-editor.ts';
import { RowFinder } from './find-rows.ts';

type RowCorrection = Extract<Correction, { readonly row: unknown }>;

export type CorrectionStatus = 'applied' | 'overruled' | 'lifted' | 'lost';

/** What became of one correction. */
export interface CorrectionFate {
  readonly correction: Correction;
  readonly status: CorrectionStatus;
  readonly rows: number;
  /** What the row held as imported, '' where not one value of one row is meant. */
  readonly before: string;
}

export interface Corrected {
  /** The readings with every change in it, rows and order as imported. */
  readonly table: Table;
  /** By row: the correction that sets it aside. */
  readonly aside: ReadonlyMap<number, Correction>;
  /** By row: the corrections that changed something in it, in the order of effect. */
  readonly touched: ReadonlyMap<number, readonly Correction[]>;
  /** In the order of effect. */
  readonly fates: readonly CorrectionFate[];
}

/**
 * Lays corrections over imported readings. Those of one row come first and go by the row as imported, the latest of a
 * row and column counting; then whole units are swapped and merged, in the order in which that was decided.
 */
export function applyCorrections(accepted: Table, corrections: readonly Correction[]): Corrected {
  const ordered = [...corrections].sort((a, b) => rankOf(a) - rankOf(b) || byEffect(a, b));
  const work = new Work(accepted, ordered);
  const fates = ordered.map((correction) => work.apply(correction));
  return { table: makeTable(work.editor.columns()), aside: work.aside, touched: work.touched, fates };
}

const rankOf = ({ action }: Correction): number => (action === 'merge_units' || action === 'swap_units' ? 2 : 1);

class Work {
  readonly editor: ColumnEditor;
  readonly aside = new Map<number, Correction>();
  readonly touched = new Map<number, Correction[]>();
  readonly #accepted: Table;
  readonly #finder: RowFinder;
  /** Which correction has the last word on a row and what of it. */
  readonly #last = new Map<string, Correction>();

  constructor(accepted: Table, ordered: readonly Correction[]) {
    this.#accepted = accepted;
    this.editor = new ColumnEditor(accepted);
    this.#finder = new RowFinder(accepted, ordered);
    for (const correction of ordered) {
      if (correction.lifted || !('row' in correction)) continue;
      this.#last.set(subjectOf(this.#finder.find(correction.row), correction), correction);
    }
  }

  apply(correction: Correction): CorrectionFate {
    if (correction.lifted) return { correction, status: 'lifted', rows: 0, before: '' };
    return 'row' in correction ? this.#applyToRow(correction) : this.#applyToUnits(correction);
  }

  #applyToRow(correction: RowCorrection): CorrectionFate {
    const row = this.#finder.find(correction.row);
    if (row < 0) return { correction, status: 'lost', rows: 0, before: '' };
    const before = correction.action === 'change' ? shownAt(this.#accepted, correction.column, row) : '';
    if (this.#last.get(subjectOf(row, correction)) !== correction)
      return { correction, status: 'overruled', rows: 0, before };
    if (correction.action === 'change') {
      const value = correctedValue(correction.column, correction.value);
      if (value) this.editor.set(correction.column, row, value);
    } else if (correction.action === 'set_aside') this.aside.set(row, correction);
    if (correction.action !== 'restore') this.#touch(row, correction);
    return { correction, status: 'applied', rows: 1, before };
  }

  #applyToUnits(correction: Correction): CorrectionFate {
    const rename = renamer(correction, this.#accepted);
    let rows = 0;
    for (let row = 0; row < this.#accepted.rows; row++) {
      const unit = rename(this.editor.text('unit', row), row);
      if (unit === undefined) continue;
      this.editor.set('unit', row, { kind: 'text', value: unit });
      this.#touch(row, correction);
      rows++;
    }
    return { correction, status: rows > 0 ? 'applied' : 'lost', rows, before: '' };
  }

  #touch(row: number, correction: Correction): void {
    const list = this.touched.get(row);
    if (list) list.push(correction);
    else this.touched.set(row, [correction]);
  }
}

/** The new unit of a row, undefined where it keeps its own. */
function renamer(correction: Correction, accepted: Table): (unit: string, row: number) => string | undefined {
  if (correction.action === 'merge_units') {
    const from = plainUnit(correction.from);
    return (unit) => (plainUnit(unit) === from && unit !== correction.to ? correction.to : undefined);
  }
  if (correction.action !== 'swap_units') return () => undefined;
  const [first, second] = correction.units;
  const taken = numbersOf(accepted, 'taken_at');
  return (unit, row) => {
    const plain = plainUnit(unit);
    if (plain !== plainUnit(first) && plain !== plainUnit(second)) return undefined;
    if (writeDay(taken[row]) !== correction.visited_on) return undefined;
    return plain === plainUnit(first) ? second : first;
  };
}

/** What a correction of a row is about: one column of it, or whether it counts at all. */
function subjectOf(row: number, correction: Correction): string {
  return `${row} ${correction.action === 'change' ? correction.column : ''}`;
}

function shownAt(table: Table, name: string, row: number): string {
  const column = table.columns.get(name);
  if (!column) return '';
  if (column.kind === 'text') return column.codes[row] < 0 ? '' : column.levels[column.codes[row]];
  if (column.kind === 'date') return writeIsoDate(column.values[row]);
  const bound = column.bounds?.[row] ?? 0;
  return `${bound > 0 ? '>' : bound < 0 ? '<' : ''}${twelveDigits(column.values[row])}`;
}
