import { type Block, type BlockDialect, BlockSplitter, nameAndValue } from '../csv/block-reader.ts';
import { shapeOfBlocks } from './block-shape.ts';
import { findTitles } from './block-titles.ts';
import type { TableFound } from './find-table.ts';
import { type HeadMeaning, understandHead } from './understand-head.ts';
import type { Vocabulary } from './vocabulary.ts';

const SEPARATORS: readonly BlockDialect['separator'][] = [':', '=', ';', '\t', '|', ',', 'spaces'];
/** Fewer names than this are no printout. */
const LEAST_NAMES = 4;
/** More are no names. */
const MOST_NAMES = 300;

export interface BlocksFound {
  readonly dialect: BlockDialect;
  /** The blocks as the rows of a table whose heads are the names. */
  readonly table: TableFound;
}

/** Finds a file of name-value lines: the separator by which most names are understood. */
export function findBlocks(text: string, vocabulary: Vocabulary): BlocksFound | undefined {
  const newline = text.includes('\n') || !text.includes('\r') ? '\n' : '\r';
  let best: BlocksFound | undefined;
  for (const separator of SEPARATORS) {
    const found = bySeparator(text, separator, newline, vocabulary);
    if (found && found.table.score > (best?.table.score ?? LEAST_NAMES - 1)) best = found;
  }
  return best;
}

function bySeparator(
  text: string,
  separator: BlockDialect['separator'],
  newline: '\n' | '\r',
  vocabulary: Vocabulary,
): BlocksFound | undefined {
  const lines = text.split(newline);
  const all = namesOf(lines, separator);
  if (all.length > MOST_NAMES) return undefined;
  const above = findTitles(
    lines,
    separator,
    all.map((name) => understandHead(name, vocabulary)),
    vocabulary,
  );
  const own = above.titles.size > 0 ? namesOf(lines, separator, above.titles) : all;
  const meant = own.map((head) => understandHead(head, vocabulary));
  const score = new Set(
    meant.flatMap((meaning) => (meaning ? [`${meaning.field} ${meaning.fire} ${meaning.state}`] : [])),
  ).size;
  const isMeasured = ({ field }: HeadMeaning): boolean =>
    vocabulary.fields.get(field)?.measured === true || field === 'co';
  const measured = new Set(own.filter((_, i) => meant[i] && isMeasured(meant[i])));
  if (score < LEAST_NAMES || measured.size === 0) return undefined;
  const heads = [...own, ...above.heads];
  const meanings = [...meant, ...above.meanings];
  const known = new Map(heads.map((head, i) => [head, meanings[i]?.field ?? '']));
  const plain = { separator, newline, titles: above.titles, measured };
  const sections = new BlockSplitter({ ...plain, blankEnds: true, leads: new Set(), carried: new Set() }).push(
    text,
    true,
  );
  const anyWhole = sections.some((section) => isWhole(section, known, measured));
  const named = new Set(own.filter((_, i) => meant[i]?.field === 'unit' || meant[i]?.field === 'taken_at'));
  const shape = shapeOfBlocks(lines, plain, named, anyWhole);
  const blankEnds = shape.carried.size === 0 && (sections.length === 0 || anyWhole);
  const dialect = { ...plain, ...shape, blankEnds };
  const blocks = new BlockSplitter(dialect).push(text, true);
  const rows = blocks.map(({ values }) => heads.map((head) => values.get(head) ?? ''));
  const table = {
    dialect: { delimiter: ',' as const, newline, starts: [] },
    headRecords: 0,
    heads,
    meanings,
    units: [],
    preamble: [],
    rows,
    score,
  };
  return { dialect, table };
}

/** The different names of the lines that are no titles; it stops where there are too many. */
function namesOf(
  lines: readonly string[],
  separator: BlockDialect['separator'],
  titles: BlockDialect['titles'] = new Map(),
): readonly string[] {
  const names = new Set<string>();
  for (const line of lines) {
    const pair = titles.has(line.trim()) ? undefined : nameAndValue(line, separator);
    if (pair) names.add(pair[0]);
    if (names.size > MOST_NAMES) break;
  }
  return [...names];
}

/** A section between blank lines that holds a date and a measurement is a test of its own. */
function isWhole({ values }: Block, known: ReadonlyMap<string, string>, measured: ReadonlySet<string>): boolean {
  const names = [...values.keys()];
  return names.some((name) => measured.has(name)) && names.some((name) => known.get(name) === 'taken_at');
}
