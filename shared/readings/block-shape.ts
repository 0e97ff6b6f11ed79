import { type BlockDialect, isRule, nameAndValue } from '../csv/block-reader.ts';

export interface BlockShape {
  /** Names by which heads begin, all above the results; empty where results stand above a unit and a date. */
  readonly leads: ReadonlySet<string>;
  /** Names of heads that hold for all results below them; empty where each test has a head of its own. */
  readonly carried: ReadonlySet<string>;
}

const NO_HEADS: BlockShape = { leads: new Set(), carried: new Set() };

interface Line {
  readonly kind: 'title' | 'gap' | 'result' | 'other';
  /** '' of a title and a gap. */
  readonly name: string;
}

/**
 * Where in a file of printouts the heads stand. One holds for more than the test below it only where the same results stand
 * below it again, and either no section between blank lines is whole by itself or titles stand between heads and results:
 * else a test has lost its head, and gets nobody else's.
 */
export function shapeOfBlocks(
  texts: readonly string[],
  { separator, titles, measured }: Pick<BlockDialect, 'separator' | 'titles' | 'measured'>,
  names: ReadonlySet<string>,
  anyWhole: boolean,
): BlockShape {
  const lines = texts.flatMap((text): Line[] => {
    if (titles.has(text.trim())) return [{ kind: 'title', name: '' }];
    if (isRule(text)) return [{ kind: 'gap', name: '' }];
    const [name] = nameAndValue(text, separator) ?? [];
    if (name === undefined) return [];
    return [{ kind: measured.has(name) ? 'result' : 'other', name }];
  });
  const top = new Set<string>();
  for (const line of lines) {
    if (line.kind === 'result') break;
    if (line.kind === 'other') top.add(line.name);
  }
  if (![...top].some((name) => names.has(name))) return NO_HEADS;
  for (const name of besideTop(lines, top, names)) top.add(name);
  const { inHeads, below, isShared, byTitles } = headsBelow(lines, top);
  const isApart = [...inHeads].every((name) => !below.has(name));
  return { leads: top, carried: isShared && isApart && (byTitles || !anyWhole) ? inHeads : new Set() };
}

/**
 * Names of a unit or a date that stand, behind a gap, in one section with names of the top: heads begin with them as well,
 * where the first of the file has lost them.
 */
function besideTop(lines: readonly Line[], top: ReadonlySet<string>, names: ReadonlySet<string>): ReadonlySet<string> {
  const found = new Set<string>();
  let section: string[] = [];
  let isBehindGap = true;
  for (const line of lines) {
    if (line.kind === 'other') {
      section.push(line.name);
      continue;
    }
    if (isBehindGap && section.some((name) => top.has(name)))
      for (const name of section) if (names.has(name)) found.add(name);
    section = [];
    isBehindGap = line.kind !== 'result';
  }
  return found;
}

/** What stands in the heads, which begin with one of the names at the top of the file, and what below them. */
function headsBelow(lines: readonly Line[], top: ReadonlySet<string>) {
  const inHeads = new Set<string>();
  const below = new Set<string>();
  let results = new Set<string>();
  let [isHead, isShared, isTitle, above, between] = [false, false, false, false, false];
  for (const line of lines) {
    if (line.kind === 'title') isTitle = true;
    if (line.kind === 'title' || line.kind === 'gap') continue;
    if (line.kind === 'result') {
      between ||= isTitle;
      isShared ||= results.has(line.name);
      results.add(line.name);
      isHead = false;
    } else if (isHead || top.has(line.name)) {
      above ||= isTitle && !isHead;
      if (!isHead) results = new Set();
      isHead = true;
      inHeads.add(line.name);
    } else below.add(line.name);
    isTitle = false;
  }
  return { inHeads, below, isShared, byTitles: between && !above };
}
