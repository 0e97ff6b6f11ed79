/** Lines looked at; a table of fixed columns shows its gaps in far fewer. */
const LINES = 200;

/**
 * Where the columns of a table in fixed places begin, in characters: a column begins after a place that is blank on
 * nearly every line of the table's longest run of long lines. One start (0) means that there are no such columns.
 */
export function fixedColumns(sample: string, newline: string): number[] {
  const lines = tableLines(
    sample
      .split(newline)
      .slice(0, LINES)
      .map((line) => line.trimEnd()),
  );
  if (lines.length < 2) return [0];
  const width = Math.max(...lines.map((line) => line.length));
  const blank = (at: number): boolean => lines.every((line) => at >= line.length || line[at] === ' ');
  // One blank within a text ("CO raw") is no gap: both its neighbors are written on one line.
  const within = (at: number): boolean =>
    lines.some((line) => at > 0 && (line[at - 1] ?? ' ') !== ' ' && (line[at + 1] ?? ' ') !== ' ');
  const gap = (at: number): boolean => blank(at) && !(within(at) && !blank(at - 1) && !blank(at + 1));
  const starts: number[] = [];
  for (let at = 0; at < width; at++) if (!gap(at) && (at === 0 || gap(at - 1))) starts.push(at);
  if (starts[0] !== 0) starts.unshift(0);
  return starts;
}

/** Lines with at least half as many gaps as the one that has most: a title or a signature has a gap or two. */
function tableLines(lines: readonly string[]): string[] {
  const gaps = (line: string): number => line.match(/\S {2,}(?=\S)/g)?.length ?? 0;
  const most = lines.reduce((best, line) => Math.max(best, gaps(line)), 0);
  return lines.filter((line) => gaps(line) > 0 && gaps(line) >= most / 2);
}
