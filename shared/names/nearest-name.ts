/** Edits (insert, delete, replace, swap of neighbors) that turn one word into the other. */
function distance(a: string, b: string): number {
  const rows = Array.from({ length: a.length + 1 }, (_, i) => [i, ...new Array<number>(b.length).fill(0)]);
  for (let j = 1; j <= b.length; j++) rows[0][j] = j;
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      rows[i][j] = Math.min(rows[i - 1][j] + 1, rows[i][j - 1] + 1, rows[i - 1][j - 1] + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        rows[i][j] = Math.min(rows[i][j], rows[i - 2][j - 2] + 1);
    }
  }
  return rows[a.length][b.length];
}

/** The name closest to what was written, '' where none is close enough to be meant (more than 40 % of it differs). */
export function nearestName(written: string, names: Iterable<string>): string {
  const word = written.toLowerCase().slice(0, 60);
  if (word === '') return '';
  let [best, least] = ['', Math.max(1, Math.floor(word.length * 0.4)) + 1];
  for (const name of names) {
    if (Math.abs(name.length - word.length) >= least) continue;
    const steps = distance(word, name.toLowerCase());
    if (steps < least) [best, least] = [name, steps];
  }
  return best;
}
