import type { SourceFile } from '../cell.ts';
import { readText } from '../csv/read-text.ts';
import { type RecordBatch, RecordReader } from '../csv/record-reader.ts';
import { classifyLine } from './classify-line.ts';
import { tableAt } from './find-table.ts';
import type { FilePlan, Section } from './mapping.ts';
import { planTable } from './plan-file.ts';
import { type Profile, profilesFor } from './profile.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A head line below the first: the file's own again, or that of another table. */
export interface HeadLine {
  readonly line: number;
  readonly own: boolean;
}

/** Rows of a table by which it is planned, and lines above its head that can say what holds for it. */
const SAMPLE_ROWS = 300;
const PREAMBLE_LINES = 12;
/** With more different head lines a file is no series of tables. */
const MOST_SHAPES = 40;

type Records = string[][];

interface Shape {
  readonly line: number;
  readonly head: readonly string[];
  readonly preamble: Records;
  readonly rows: Records;
}

/**
 * Plans the parts of a file that stand under other head lines than its first, each by its own heads and rows. Parts under
 * equal heads are planned once. A part that is no table of readings has no plan.
 */
export async function planSections(
  file: SourceFile,
  plan: FilePlan,
  vocabulary: Vocabulary,
  profiles: readonly Profile[],
  heads: readonly HeadLine[],
): Promise<readonly Section[]> {
  const found = new ShapeFinder(plan, vocabulary, heads);
  const records = new RecordReader(plan.dialect);
  for await (const { text } of readText(file.open(), plan.encoding)) found.take(records.push(text));
  found.take(records.push('', true));
  const planned = new Map(
    found.shapes
      .slice(0, MOST_SHAPES)
      .map((shape) => [shape, planShape(shape, plan, vocabulary, profilesFor(file.name, profiles))] as const),
  );
  return found.parts.map(({ line, shape }): Section => {
    if (!shape) return { line, headLines: 1, plan, columns: plan, own: true };
    const own = planned.get(shape);
    return {
      line,
      headLines: own?.headRecords ?? 1,
      plan: own && isUsable(own, vocabulary) ? own : undefined,
      columns: own ?? plan,
      own: false,
    };
  });
}

class ShapeFinder {
  readonly shapes: Shape[] = [];
  readonly parts: { readonly line: number; readonly shape: Shape | undefined }[] = [];
  readonly #plan: FilePlan;
  readonly #vocabulary: Vocabulary;
  readonly #heads: ReadonlyMap<number, HeadLine>;
  readonly #known = new Map<string, Shape>();
  #current: Shape | undefined;
  #before: Records = [];

  constructor(plan: FilePlan, vocabulary: Vocabulary, heads: readonly HeadLine[]) {
    this.#plan = plan;
    this.#vocabulary = vocabulary;
    this.#heads = new Map(heads.map((head) => [head.line, head]));
  }

  take(batch: RecordBatch): void {
    batch.rows.forEach((row, i) => {
      const record = [...row];
      const head = this.#heads.get(batch.lineOf(i));
      if (head) this.#begin(record, head);
      else if (this.#current && this.#current.rows.length < SAMPLE_ROWS) this.#current.rows.push(record);
      if (!head && classifyLine(record, this.#plan, this.#vocabulary) === 'preamble')
        this.#before = [...this.#before, record].slice(-PREAMBLE_LINES);
    });
  }

  #begin(record: readonly string[], { line, own }: HeadLine): void {
    const key = JSON.stringify(record.map((cell) => cell.trim()));
    let shape = own ? undefined : this.#known.get(key);
    if (!own && !shape) {
      shape = { line, head: record, preamble: this.#before, rows: [] };
      this.#known.set(key, shape);
      this.shapes.push(shape);
    }
    this.#current = shape;
    this.#before = [];
    this.parts.push({ line, shape });
  }
}

function planShape(
  { line, head, preamble, rows }: Shape,
  plan: FilePlan,
  vocabulary: Vocabulary,
  profiles: readonly Profile[],
): FilePlan {
  const table = tableAt([head, ...rows], 0, plan.dialect, vocabulary);
  const encoding = { encoding: plan.encoding, reason: plan.encodingReason };
  const own = planTable(
    `${plan.file}, line ${line}`,
    { ...table, preamble },
    undefined,
    encoding,
    vocabulary,
    profiles,
  );
  const known = new Set([...own.columns, ...own.constants].map(({ field }) => field));
  return {
    ...own,
    constants: [...own.constants, ...plan.constants.filter(({ field }) => !known.has(field))],
    dateOrder: own.dateOrder || plan.dateOrder,
  };
}

function isUsable({ columns, constants }: FilePlan, { fields }: Vocabulary): boolean {
  const known = new Set([...columns, ...constants].map(({ field }) => field));
  const measured = [...known].some((name) => name === 'co' || fields.get(name)?.measured);
  return known.has('unit') && known.has('taken_at') && measured;
}
