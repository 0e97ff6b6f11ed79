import type { SourceFile } from '../cell.ts';
import { type Block, type BlockDialect, BlockSplitter } from '../csv/block-reader.ts';
import { readLines } from '../csv/read-lines.ts';
import { readText } from '../csv/read-text.ts';
import { RecordReader } from '../csv/record-reader.ts';
import type { OriginCell, ReadingOrigin } from '../working/reading-origin.ts';
import type { WorkedReading } from '../working/worked-reading.ts';
import { CheckedBytes } from './checked-bytes.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import { READINGS_VOCABULARY } from './vocabulary.ts';

/**
 * What readings of one file look like in it, by line. The file is read once more, to its end, and has to have the bytes by
 * which it was opened; else nothing is told of it (the text is '').
 */
export async function originsOfReadings(
  file: SourceFile,
  plan: FilePlan,
  readings: readonly WorkedReading[],
): Promise<ReadonlyMap<WorkedReading, ReadingOrigin>> {
  const end = plan.blocks ? 'blank' : 'quote';
  const wanted = new Map(readings.map(({ line }) => [line, end] as const));
  const again = new CheckedBytes(file);
  const read = await readLines(again.bytes(), plan.encoding, plan.dialect.newline, wanted);
  const texts = again.same() ? read : new Map<number, string>();
  const heads =
    plan.blocks && plan.blocks.carried.size > 0 ? await blocksAt(file, plan, plan.blocks, texts) : NO_BLOCKS;
  return new Map(
    readings.map((reading) => [
      reading,
      originOf(reading, planAt(plan, reading.line), texts.get(reading.line) ?? '', heads),
    ]),
  );
}

type BlocksByLine = ReadonlyMap<number, Block['values']>;
const NO_BLOCKS: BlocksByLine = new Map();

/** The blocks that begin on these lines, with what a head further above says of them. */
async function blocksAt(
  file: SourceFile,
  { encoding }: FilePlan,
  dialect: BlockDialect,
  lines: ReadonlyMap<number, string>,
): Promise<BlocksByLine> {
  const splitter = new BlockSplitter(dialect);
  const found = new Map<number, Block['values']>();
  const take = (blocks: readonly Block[]): void => {
    for (const { line, values } of blocks) if (lines.has(line)) found.set(line, values);
  };
  for await (const { text } of readText(file.open(), encoding)) take(splitter.push(text));
  take(splitter.push('', true));
  return found;
}

/** The plan of the part of the file in which a line stands. */
const planAt = (plan: FilePlan, line: number): FilePlan =>
  plan.sections?.findLast((section) => section.line <= line)?.plan ?? plan;

function originOf(reading: WorkedReading, plan: FilePlan, found: string, blocks: BlocksByLine): ReadingOrigin {
  const { file, line } = reading;
  const { text, cell } = plan.blocks ? printout(found, plan.blocks, blocks.get(line)) : row(found, plan);
  const cells = reading.fields.flatMap((field): OriginCell[] => {
    const column = plan.columns.find((candidate) => holds(candidate, field, reading));
    const written = column && cell(column).trim();
    return column && written
      ? [{ field, head: column.head.trim(), position: positionIn(plan, column), text: written }]
      : [];
  });
  const byHeads = (['fire', 'state'] as const).flatMap((field) => {
    const told = cells.some((one) => one.field === field);
    const naming = plan.columns.find((column) => column[field] !== '' && column[field] === reading[field]);
    return told || !naming ? [] : [{ field, head: naming.head.trim() }];
  });
  return { file, line, text, cells: cells.sort((a, b) => a.position - b.position), byHeads };
}

const positionIn = ({ blocks }: FilePlan, { index }: ColumnMapping): number => (blocks ? Number.NaN : index + 1);

/** A file with several readings on a line has a column of the same thing for each of them. */
function holds({ field, fire, state }: ColumnMapping, column: string, reading: WorkedReading): boolean {
  const kept = READINGS_VOCABULARY.fields.get(field)?.column ?? field;
  return kept === column && (fire === '' || fire === reading.fire) && (state === '' || state === reading.state);
}

interface Found {
  readonly text: string;
  cell(column: ColumnMapping): string;
}

function row(text: string, { dialect }: FilePlan): Found {
  const [record = []] = new RecordReader({ ...dialect, newline: '\n' }).push(text, true).rows;
  return { text, cell: ({ index }) => record[index] ?? '' };
}

/** Where no blank line ends a printout, the next one begins with a name that this one already has. */
function printout(found: string, dialect: BlockDialect, whole: Block['values'] | undefined): Found {
  const [block, next] = new BlockSplitter({ ...dialect, newline: '\n' }).push(found, true);
  const text = next
    ? found
        .split('\n')
        .slice(0, next.line - 1)
        .join('\n')
    : found;
  return { text, cell: ({ head }) => (whole ?? block?.values)?.get(head) ?? '' };
}
