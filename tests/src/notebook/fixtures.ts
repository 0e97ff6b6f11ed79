import type { CellKind } from '../../../shared/cell.ts';
import { fail, succeed } from '../../../shared/outcome.ts';
import { numberColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import type { CellEntry, NotebookDocument } from '../../../src/notebook/document.ts';

/** A kind that needs nothing: it adds a number to the sum of what it reads, fits (counted) and judges (counted). */
export interface Counts {
  fits: number;
  judgements: number;
}

interface SumParameters {
  readonly reads: readonly string[];
  readonly add: number;
  /** Used in judging only. */
  readonly band: number;
  readonly text: string;
}

const oneRow = (value: number) => makeTable([['value', numberColumn('1', Float64Array.of(value))]]);

export function sumKind(counts: Counts = { fits: 0, judgements: 0 }): CellKind {
  const reads = ({ reads }: SumParameters) => reads.map((cell) => ({ cell, tables: ['sum'] }));
  const kind: CellKind<SumParameters> = {
    name: 'sum',
    title: 'Sum',
    purpose: 'Adds.',
    readParameters(raw) {
      const { reads = [], add = 0, band = 1, text = '' } = (raw ?? {}) as Partial<SumParameters>;
      if (!Array.isArray(reads)) return fail('sum: reads must be a list.');
      return typeof add === 'number' ? succeed({ reads, add, band, text }) : fail('sum: add must be a number.');
    },
    reads,
    sources: () => [],
    sentence: ({ add }) => [
      'Adds ',
      { parameter: 'add', label: 'added', text: String(add), entry: { kind: 'number', unit: '' } },
    ],
    fit: {
      parameters: ({ reads, add }) => ({ reads, add }),
      reads,
      async compute({ add }, inputs) {
        counts.fits++;
        const total = [...inputs.values()].reduce((sum, { tables }) => sum + firstOf(tables.sum), add);
        return Number.isNaN(total) ? fail('sum: not a number.') : succeed({ tables: { sum: oneRow(total) } });
      },
    },
    async compute({ band }, _inputs, _context, fitted) {
      counts.judgements++;
      const total = firstOf((fitted as NonNullable<typeof fitted>).tables.sum);
      return succeed({ tables: { sum: oneRow(total), verdict: oneRow(Math.abs(total) <= band ? 1 : 0) } });
    },
    describe: ({ tables }) => ({ answer: `The sum is ${firstOf(tables.sum)}.`, tables: [], figures: [], remarks: [] }),
    files: ({ tables }) => [{ name: 'sum.csv', table: tables.sum }],
  };
  return kind as CellKind;
}

const firstOf = (table: ReturnType<typeof oneRow> | undefined): number => {
  const column = table?.columns.get('value');
  return column?.kind === 'number' ? column.values[0] : Number.NaN;
};

export const sumCell = (name: string, reads: readonly string[], parameters: object = {}): CellEntry => ({
  name,
  kind: 'sum',
  parameters: { reads, ...parameters },
});

export function notebookOf(cells: readonly CellEntry[], more: object = {}): NotebookDocument {
  return {
    format: 'between-visits-notebook',
    version: 1,
    title: 'A test',
    as_of: '2026-03-31',
    settings: { seed: 1 },
    data: [],
    cells,
    ...more,
  };
}
