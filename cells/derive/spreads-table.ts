import { ANALYZER_CLASSES, MEASURED } from '../../shared/combustion/analyzer-classes.ts';
import { spreadsSchema } from '../../shared/schemas/spreads.ts';
import { numberColumn, textColumn } from '../../shared/table/columns.ts';
import { tableOf } from '../../shared/table/schema.ts';
import type { Column, Table } from '../../shared/table/table.ts';
import type { DeriveParameters } from './parameters.ts';

/** What is taken of each analyzer that is listed, and of all others under the name ''. */
export function spreadsTable({ analyzers, defaultClass, classes }: DeriveParameters): Table {
  const named = Object.entries(analyzers).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  const rows = [['', defaultClass] as const, ...named].flatMap(([analyzer, name]) =>
    MEASURED.map((quantity) => {
      const spread = classes[name][quantity];
      const usual = Object.hasOwn(ANALYZER_CLASSES, name) ? ANALYZER_CLASSES[name][quantity] : undefined;
      const isUsual = usual?.absolute === spread.absolute && usual.relative === spread.relative;
      return { analyzer, name, quantity, ...spread, source: isUsual ? 'default' : 'edited' };
    }),
  );
  return tableOf(
    spreadsSchema,
    rows.length,
    new Map<string, Column>([
      ['analyzer', textColumn(rows.map(({ analyzer }) => analyzer))],
      ['class', textColumn(rows.map(({ name }) => name))],
      ['quantity', textColumn(rows.map(({ quantity }) => quantity))],
      [
        'absolute',
        numberColumn(
          '1',
          Float64Array.from(rows, ({ absolute }) => absolute),
        ),
      ],
      [
        'relative',
        numberColumn(
          '1',
          Float64Array.from(rows, ({ relative }) => relative),
        ),
      ],
      ['source', textColumn(rows.map(({ source }) => source))],
    ]),
  );
}
