import { type Markup, markup } from '../../shared/markup/markup.ts';
import { fireName, fuelName, quantityName } from '../../shared/messages/lanes.ts';
import * as say from '../../shared/messages/report.ts';
import { displayedPressure } from '../../shared/quantities/displayed-pressure.ts';
import type { Settings } from '../../shared/settings.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { type PrintedColumn, printTable, rowsWhere } from './sheet.ts';

/** A table of one kind of cell as the report prints it. */
interface Printed {
  readonly kind: string;
  readonly table: string;
  readonly file: string;
  /** Only rows of the raised units. */
  readonly raisedOnly: boolean;
  readonly columns: readonly FigureColumn[];
}

const MOST_ROWS = 400;
const column = (name: string, title: string, digits = 0): PrintedColumn => ({ column: name, title, digits });

/** Printed in the unit that the notebook settles; `plain` leaves the unit out of the head. */
interface FigureColumn extends PrintedColumn {
  readonly measure?: 'pressure' | 'money';
  readonly plain?: boolean;
}

const pressure = (name: string, title: string, digits = 0): FigureColumn => ({
  ...column(name, title, digits),
  measure: 'pressure',
});

const KEY: readonly PrintedColumn[] = [column('unit', 'Unit'), { ...column('fuel', 'Fuel'), words: fuelName }];

const PRINTED: readonly Printed[] = [
  {
    kind: 'drift',
    table: 'drift',
    file: 'drift.csv',
    raisedOnly: true,
    columns: [
      ...KEY,
      { ...column('fire', 'Fire'), words: fireName },
      { ...column('quantity', 'In'), words: quantityName },
      column('level_now', 'Level now', 2),
      column('level_now_sd', '±', 2),
      column('lower_limit', 'From', 2),
      column('upper_limit', 'To', 2),
      column('slope_per_year', 'Drift a year', 2),
      column('slope_lower', 'lower', 2),
      column('slope_upper', 'upper 95 %', 2),
      { ...column('probability_out_by_horizon', 'Chance out'), share: true },
      column('leaves_on_50', 'Even chance on'),
      column('visits_used', 'Visits'),
    ],
  },
  {
    kind: 'supply',
    table: 'supply',
    file: 'supply.csv',
    raisedOnly: true,
    columns: [
      column('unit', 'Unit'),
      pressure('static_now_Pa', 'Static'),
      pressure('running_now_Pa', 'Running'),
      pressure('drop_now_Pa', 'Drop'),
      pressure('drop_limit_Pa', 'Limit'),
      pressure('drop_slope_Pa_per_year', 'Growth a year', 1),
      { ...pressure('slope_lower', 'lower', 1), plain: true },
      { ...pressure('slope_upper', 'upper 95 %', 1), plain: true },
      column('exceeds_on_50', 'Even chance over on'),
      column('verdict', 'Verdict'),
      column('readings_used', 'Readings'),
    ],
  },
  {
    kind: 'instruments',
    table: 'instruments',
    file: 'instruments.csv',
    raisedOnly: false,
    columns: [
      column('analyzer', 'Analyzer'),
      column('readings', 'Readings'),
      column('o2_bias_pct', 'O2 bias', 2),
      column('o2_bias_pct_sd', '±', 2),
      column('co2_bias_pct', 'CO2 bias', 2),
      column('co2_bias_pct_sd', '±', 2),
      column('verdict', 'Verdict'),
    ],
  },
  {
    kind: 'savings',
    table: 'savings',
    file: 'savings.csv',
    raisedOnly: false,
    columns: [
      ...KEY,
      column('left_on', 'Visit'),
      column('efficiency_found_pct', 'Found, %', 1),
      column('efficiency_left_pct', 'Left, %', 1),
      column('fuel_saved_pct', 'Fuel saved, %', 2),
      column('fuel_saved_pct_lower', 'lower', 2),
      column('fuel_saved_pct_upper', 'upper 90 %', 2),
      { ...column('cost_saved', 'Cost saved a year'), measure: 'money' },
      column('co2e_saved_kg', 'CO2e a year, kg'),
      column('persistence_years', 'Lasts, years', 1),
      column('distinguishable', 'Told from nothing'),
    ],
  },
];

/** What the report prints of one result beyond the raised units: its title, its answer, its rows. */
export interface FiguresOf {
  readonly kind: string;
  readonly title: string;
  readonly answer: string;
  readonly tables: Readonly<Record<string, Table>>;
}

/** The tables behind the raised units, then instruments and savings, each no longer than a few pages. */
export function figuresSection(
  cells: readonly FiguresOf[],
  raisedUnits: ReadonlySet<string>,
  settings: Settings,
): Markup {
  const blocks = PRINTED.flatMap(({ kind, table: name, file, raisedOnly, columns }) =>
    cells
      .filter((cell) => cell.kind === kind && cell.tables[name])
      .map(({ title, answer, tables }) => {
        const table = tables[name];
        const unit = textsOf(table, 'unit');
        const rows = rowsWhere(table, (row) => !raisedOnly || raisedUnits.has(textAt(unit, row)));
        const shown = rows.slice(0, MOST_ROWS);
        return markup`<h3>${title}</h3><p>${answer}</p>${printTable(
          table,
          shown,
          columns.map((entry) => inSettledUnit(entry, settings)),
        )}<p class="quiet">${say.tableShown(shown.length, rows.length, file)}</p>`;
      }),
  );
  return blocks.length > 0 ? markup`<section><h2>${say.figuresHead()}</h2>${blocks}</section>` : markup``;
}

function inSettledUnit(entry: FigureColumn, { pressureUnit, currency }: Settings): PrintedColumn {
  const { measure, plain = false, title, digits = 0 } = entry;
  if (measure === 'money') return currency === '' ? entry : { ...entry, title: `${title}, ${currency}` };
  if (measure !== 'pressure') return entry;
  const { unit, pascals, moreDigits } = displayedPressure(pressureUnit);
  const named = { ...entry, title: plain ? title : `${title}, ${unit}` };
  return pascals === 1 ? named : { ...named, digits: digits + moreDigits, per: pascals };
}
