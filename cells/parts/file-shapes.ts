import * as say from '../../shared/messages/columns.ts';
import { findUnit } from '../../shared/quantities/find-unit.ts';
import { WORD_SEPARATOR } from '../../shared/readings/columns-table.ts';
import type { Field } from '../../shared/readings/fields.ts';
import { headKeys } from '../../shared/readings/head-keys.ts';
import { IN_CELLS } from '../../shared/readings/read-number.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** One column of a file and what it was taken for; `field` is '' where it is not used. */
export interface FileColumn {
  readonly head: string;
  /** What a profile calls it (see headKeys). */
  readonly key: string;
  readonly firstValue: string;
  readonly field: string;
  readonly unit: string;
  readonly fire: string;
  readonly state: string;
  /** In per cent; NaN where the column is not used. */
  readonly sure: number;
  readonly reason: string;
  /** Words among its values for a fire or a state that nobody knows. */
  readonly words: readonly string[];
}

/** Files, or parts of files, whose heads were read alike. */
export interface FileShape {
  /** The first of them. */
  readonly file: string;
  /** Line of its head; NaN at the beginning of the file. */
  readonly line: number;
  readonly more: number;
  readonly profile: string;
  readonly columns: readonly FileColumn[];
}

/** The shapes of a table of columns (see columnsSchema), in the order of the files. */
export function fileShapes(table: Table): FileShape[] {
  const text = (name: string): ((row: number) => string) => {
    const column = textsOf(table, name);
    return (row) => textAt(column, row);
  };
  const [file, head, firstValue, field, unit, fire, state, reason, words, profile] = [
    'source_file',
    'head',
    'first_value',
    'taken_for',
    'unit_code',
    'fire',
    'state',
    'reason',
    'unknown_words',
    'profile',
  ].map(text);
  const [line, sure] = [numbersOf(table, 'source_line'), numbersOf(table, 'sure_pct')];
  const parts = new Map<string, { shape: FileShape; columns: FileColumn[] }>();
  for (let row = 0; row < table.rows; row++) {
    const key = `${line[row]} ${file(row)}`;
    const columns = parts.get(key)?.columns ?? [];
    if (columns.length === 0)
      parts.set(key, {
        shape: { file: file(row), line: line[row], more: 0, profile: profile(row), columns },
        columns,
      });
    columns.push({
      head: head(row),
      key: '',
      firstValue: firstValue(row),
      field: field(row),
      unit: unit(row),
      fire: fire(row),
      state: state(row),
      sure: sure[row],
      reason: reason(row),
      words: words(row).split(WORD_SEPARATOR).filter(Boolean),
    });
  }
  return alike([...parts.values()].map(({ shape }) => withKeys(shape)));
}

function withKeys(shape: FileShape): FileShape {
  const keys = headKeys(shape.columns.map(({ head }) => head));
  return { ...shape, columns: shape.columns.map((column, i) => ({ ...column, key: keys[i] })) };
}

function alike(shapes: readonly FileShape[]): FileShape[] {
  const known = new Map<string, FileShape>();
  for (const shape of shapes) {
    const { profile, columns } = shape;
    const key = JSON.stringify([
      profile,
      columns.map(({ head, field, unit, fire, state }) => [head, field, unit, fire, state]),
    ]);
    const first = known.get(key);
    known.set(
      key,
      first ? { ...first, more: first.more + 1, columns: first.columns.map(withWordsOf(columns)) } : shape,
    );
  }
  return [...known.values()];
}

/** Files of one shape may each have words of their own. */
const withWordsOf =
  (others: readonly FileColumn[]) =>
  (column: FileColumn, i: number): FileColumn => ({
    ...column,
    words: [...new Set([...column.words, ...others[i].words])],
  });

export const hasUnknownWords = ({ columns }: FileShape): boolean => columns.some(({ words }) => words.length > 0);

/** The used column that is least sure, where one is less than surely known. */
export function leastSure({ columns }: FileShape): FileColumn | undefined {
  const used = columns.filter(({ field, sure }) => field !== '' && sure < SURE);
  return used.length === 0 ? undefined : used.reduce((least, column) => (column.sure < least.sure ? column : least));
}

/** Per cent from which a column needs no second look. */
export const SURE = 80;

/** Heads with values that are not read. */
export const unreadHeads = ({ columns }: FileShape): string[] =>
  columns
    .filter(({ field, head, firstValue }) => field === '' && head !== '' && firstValue !== '')
    .map(({ head }) => head);

const SHARES: Readonly<Record<string, string>> = { o2_pct: '1', co2_pct: '1', excess_air_printed_pct: 'lambda' };

/** The units a field can be given in, the one it has among them; empty where there is nothing to choose. */
export function unitChoices(
  field: Field | undefined,
  now: string,
): { readonly code: string; readonly label: string }[] {
  if (field?.kind !== 'number') return [];
  const share = SHARES[field.name];
  const usual = field.suffixes ? Object.values(field.suffixes) : share ? [field.unit, share] : [];
  const codes = [...new Set(now !== '' && usual.length > 0 ? [...usual, now] : usual)];
  return codes.map((code) => ({ code, label: unitWords(code) }));
}

function unitWords(code: string): string {
  if (code === IN_CELLS) return say.asEachCell();
  if (code === 'lambda') return say.airRatio();
  return code === '1' ? say.shareOfOne() : findUnit(code)?.shown || code;
}
