import type { CellResult, Inputs } from '../../shared/cell.ts';
import type { Correction } from '../../shared/corrections/correction.ts';
import * as say from '../../shared/messages/corrections.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { correctionsSchema, importedRowsSchema } from '../../shared/schemas/corrections.ts';
import { accountSchema, setAsideSchema } from '../../shared/schemas/readings.ts';
import { numberColumn, numbersOf, textAt, textColumn, textsOf } from '../../shared/table/columns.ts';
import { tableOf } from '../../shared/table/schema.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import { takeTable } from '../../shared/table/take-table.ts';
import { orderRows } from '../../shared/table/verbs.ts';
import { applyCorrections, type Corrected, type CorrectionFate } from './apply-corrections.ts';
import type { CorrectionsParameters } from './parameters.ts';

/**
 * Tables: accepted, set-aside, account, duplicates as readings has them, after the corrections; corrections; and, where
 * anything was touched, imported-rows: for each accepted row the row it was as imported.
 */
export interface CorrectionsResult extends CellResult {
  readonly fates: readonly CorrectionFate[];
  readonly touched: number;
  readonly setAside: number;
  /** By row of the accepted readings: the corrections that changed something in it. */
  readonly changedBy: ReadonlyMap<number, readonly Correction[]>;
}

export async function compute(
  { readings, corrections }: CorrectionsParameters,
  inputs: Inputs,
): Promise<Outcome<CorrectionsResult>> {
  const tables = inputs.get(readings)?.tables ?? {};
  const { accepted } = tables;
  if (!accepted) return fail(say.noReadings(readings));
  const corrected = applyCorrections(accepted, corrections);
  const { fates, touched, aside } = corrected;
  const rows = touched.size === 0 ? undefined : remainingRows(corrected);
  const layer =
    rows === undefined
      ? tables
      : {
          ...tables,
          accepted: finished(corrected, rows),
          'imported-rows': tableOf(
            importedRowsSchema,
            rows.length,
            new Map([['row', numberColumn('1', Float64Array.from(rows))]]),
          ),
          'set-aside': withAside(tables['set-aside'], accepted, corrected),
          account: recounted(tables.account, accepted, corrected),
        };
  return succeed({
    tables: { ...layer, corrections: fatesTable(fates) },
    fates,
    touched: touched.size,
    setAside: aside.size,
    changedBy: changesByRow(corrected, rows),
  });
}

function changesByRow({ touched }: Corrected, rows: Uint32Array | undefined): Map<number, readonly Correction[]> {
  const changes = new Map<number, readonly Correction[]>();
  rows?.forEach((before, row) => {
    const of = touched.get(before);
    if (of) changes.set(row, of);
  });
  return changes;
}

/** Without the rows set aside, and in the order that readings keep, since a changed unit or date moves its row. */
function remainingRows({ table, aside }: Corrected): Uint32Array {
  const order = orderRows(
    table,
    ['unit', 'taken_at', 'fire', 'state'].map((column) => ({ column })),
  );
  return order.filter((row) => !aside.has(row));
}

function finished({ table }: Corrected, rows: Uint32Array): Table {
  return takeTable(table, rows);
}

function withAside(before: Table | undefined, accepted: Table, { aside }: Corrected): Table {
  const old = before ?? tableOf(setAsideSchema, 0, new Map());
  const file = textsOf(accepted, 'source_file');
  const line = numbersOf(accepted, 'source_line');
  const rows = [...aside].sort(([a], [b]) => a - b);
  const texts = (name: string, added: (row: number) => string): ReturnType<typeof textColumn> => {
    const column = textsOf(old, name);
    const kept = Array.from({ length: old.rows }, (_, row) => textAt(column, row));
    return textColumn([...kept, ...rows.map(([row]) => added(row))]);
  };
  const reasonOf = new Map(
    rows.map(([row, { initials, made_on, reason }]) => [row, say.setAsideBy(initials, made_on, reason)]),
  );
  return tableOf(
    setAsideSchema,
    old.rows + rows.length,
    new Map<string, Column>([
      ['source_file', texts('source_file', (row) => textAt(file, row))],
      [
        'source_line',
        numberColumn('1', Float64Array.of(...numbersOf(old, 'source_line'), ...rows.map(([row]) => line[row]))),
      ],
      ['reason', texts('reason', (row) => reasonOf.get(row) ?? '')],
      ['original', texts('original', () => '')],
    ]),
  );
}

/** What was accepted and then set aside moves from one column to the other, so that the three still add up. */
function recounted(account: Table | undefined, accepted: Table, { aside }: Corrected): Table {
  if (!account) return tableOf(accountSchema, 0, new Map());
  const source = textsOf(accepted, 'source_file');
  const moved = new Map<string, number>();
  for (const row of aside.keys()) moved.set(textAt(source, row), (moved.get(textAt(source, row)) ?? 0) + 1);
  const file = textsOf(account, 'file');
  const shifted = (name: string, sign: 1 | -1): Float64Array =>
    numbersOf(account, name).map((count, row) => count + sign * (moved.get(textAt(file, row)) ?? 0));
  return makeTable([
    ...account.columns,
    ['accepted', numberColumn('1', shifted('accepted', -1))],
    ['set_aside', numberColumn('1', shifted('set_aside', 1))],
  ]);
}

function fatesTable(fates: readonly CorrectionFate[]): Table {
  const texts = (text: (fate: CorrectionFate) => string): ReturnType<typeof textColumn> => textColumn(fates.map(text));
  const row = (name: 'taken_at' | 'fire' | 'state') =>
    texts(({ correction }) => ('row' in correction ? correction.row[name] : ''));
  return tableOf(
    correctionsSchema,
    fates.length,
    new Map<string, Column>([
      ['id', texts(({ correction }) => correction.id)],
      ['action', texts(({ correction }) => correction.action)],
      ['unit', texts(unitOf)],
      [
        'taken_at',
        texts((fate) => (fate.correction.action === 'swap_units' ? fate.correction.visited_on : takenAt(fate))),
      ],
      ['fire', row('fire')],
      ['state', row('state')],
      ['column', texts(({ correction }) => (correction.action === 'change' ? correction.column : ''))],
      ['before', texts(({ before }) => before)],
      ['after', texts(({ correction }) => afterOf(correction))],
      ['reason', texts(({ correction }) => correction.reason)],
      ['initials', texts(({ correction }) => correction.initials)],
      [
        'made_on',
        { kind: 'date', values: Float64Array.from(fates, ({ correction }) => readIsoDate(correction.made_on)) },
      ],
      ['status', texts(({ status }) => status)],
      [
        'rows',
        numberColumn(
          '1',
          Float64Array.from(fates, ({ rows }) => rows),
        ),
      ],
    ]),
  );
}

const takenAt = ({ correction }: CorrectionFate): string => ('row' in correction ? correction.row.taken_at : '');

function unitOf({ correction }: CorrectionFate): string {
  if ('row' in correction) return correction.row.unit;
  return correction.action === 'merge_units' ? correction.from : correction.units[0];
}

function afterOf(correction: CorrectionFate['correction']): string {
  if (correction.action === 'change') return correction.value;
  if (correction.action === 'merge_units') return correction.to;
  return correction.action === 'swap_units' ? correction.units[1] : '';
}
