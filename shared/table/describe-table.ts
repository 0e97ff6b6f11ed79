import type { Description, Remark } from '../cell.ts';
import { type Schema, shownColumns } from './schema.ts';

/** How a result that has one table, an answer and remarks is described. */
export const describeTable =
  (table: string, title: string, schema: Schema) =>
  ({ answer, remarks }: { readonly answer: string; readonly remarks: readonly Remark[] }): Description => ({
    answer,
    tables: [{ table, title, columns: shownColumns(schema) }],
    figures: [],
    remarks,
  });
