/** The letters of a line alone, by which a page's title is known whatever its number and wherever columns cut it. */
export const lettersOf = (record: readonly string[]): string =>
  record
    .join('')
    .toLowerCase()
    .replace(/\P{L}+/gu, '');
