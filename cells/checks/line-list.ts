/** Line lists longer than this end in a count; the table of touched readings has them all. */
const MOST_RUNS = 60;

/** Line numbers in one short text, runs put together: '4 9-12 40'. */
export function lineList(lines: readonly number[]): string {
  const sorted = [...new Set(lines.filter((line) => line >= 0))].sort((a, b) => a - b);
  const runs: string[] = [];
  let told = 0;
  for (let i = 0; i < sorted.length && runs.length < MOST_RUNS; ) {
    let end = i;
    while (sorted[end + 1] === sorted[end] + 1) end++;
    runs.push(end > i ? `${sorted[i]}-${sorted[end]}` : String(sorted[i]));
    i = end + 1;
    told = i;
  }
  return told < sorted.length ? `${runs.join(' ')} +${sorted.length - told}` : runs.join(' ');
}
