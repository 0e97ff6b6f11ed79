/** A parameter's name as words: "horizonDays" and "horizon_days" are "horizon days". */
export function wordsOf(name: string): string {
  return name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll('_', ' ')
    .toLowerCase();
}
