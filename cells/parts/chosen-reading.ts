import type { RowRange } from '../../shared/cell-state.ts';
import { rowWords } from '../../shared/messages/corrections.ts';
import { writeIsoDate } from '../../shared/quantities/dates.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import type { SheetPlace } from './sheet-grid.ts';
import { plainWords, shownValue } from './shown-value.ts';

/** A reading that somebody stands on in a sheet. */
export interface ChosenReading {
  readonly range: RowRange;
  readonly place: number;
  readonly column: string;
  readonly unit: string;
  readonly fire: string;
  readonly state: string;
  /** YYYY-MM-DD. */
  readonly day: string;
  readonly seen: { readonly file: string; readonly line: number };
  /** The unit, when, at which fire, in which state. */
  readonly words: string;
  /** Every value as shown, by column; '' where unknown. */
  readonly shown: ReadonlyMap<string, string>;
}

/** Taken out of the page of rows, since that one goes when the cell is calculated anew. */
export function chosenReading({ range, place, column, row }: SheetPlace['detail']): ChosenReading {
  const table = { rows: row.index + 1, columns: row.columns };
  const text = (name: string): string => textAt(textsOf(table, name), row.index);
  const takenAt = writeIsoDate(numbersOf(table, 'taken_at')[row.index]);
  const [unit, fire, state] = ['unit', 'fire', 'state'].map(text);
  return {
    range,
    place,
    column,
    unit,
    fire,
    state,
    day: takenAt.slice(0, 10),
    seen: { file: text('source_file'), line: numbersOf(table, 'source_line')[row.index] },
    words: rowWords(unit, takenAt.replace('T', ' '), plainWords(fire), state),
    shown: new Map(
      shownColumns(readingsSchema).map((shown) => [
        shown.column,
        shownValue(shown, row.columns.get(shown.column), row.index).replaceAll('\u2007', ''),
      ]),
    ),
  };
}
