import { type Block, type BlockDialect, BlockSplitter, nameAndValue } from '../csv/block-reader.ts';
import type { TableFound } from './find-table.ts';
import { understandHead } from './understand-head.ts';
import type { Vocabulary } from './vocabulary.ts';

const SEPARATORS: readonly BlockDialect['separator'][] = [':', '=', ';', '\t', '|', ',', 'spaces'];
/** Fewer names than this are no printout. */
const LEAST_NAMES = 4;

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
  const names = new Set<string>();
  for (const line of text.split(newline)) {
    const pair = nameAndValue(line, separator);
    if (pair) names.add(pair[0]);
    if (names.size > 300) return undefined;
  }
  const heads = [...names];
  const meanings = heads.map((head) => understandHead(head, vocabulary));
  const score = new Set(
    meanings.flatMap((meaning) => (meaning ? [`${meaning.field} ${meaning.fire} ${meaning.state}`] : [])),
  ).size;
  const measured = meanings.some(
    (meaning) => meaning && (vocabulary.fields.get(meaning.field)?.measured || meaning.field === 'co'),
  );
  if (score < LEAST_NAMES || !measured) return undefined;
  const known = new Map(heads.map((head, i) => [head, meanings[i]?.field ?? '']));
  const sections = new BlockSplitter({ separator, newline, blankEnds: true }).push(text, true);
  const blankEnds = sections.length === 0 || sections.some((section) => isWhole(section, known, vocabulary));
  const dialect = { separator, newline, blankEnds };
  const blocks = blankEnds ? sections : new BlockSplitter(dialect).push(text, true);
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

/** A section between blank lines that holds a date and a measurement is a test of its own. */
function isWhole({ values }: Block, known: ReadonlyMap<string, string>, vocabulary: Vocabulary): boolean {
  const fields = [...values.keys()].map((name) => known.get(name) ?? '');
  const measured = fields.some((field) => vocabulary.fields.get(field)?.measured || field === 'co');
  return measured && fields.includes('taken_at');
}
