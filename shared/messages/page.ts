/** Every sentence of the page that is not a cell's own. Named functions of strings and numbers. */

const plain = (count: number): string => count.toLocaleString('en-US').replaceAll(',', '\u202f');

export const rowsWord = (count: number): string => `${plain(count)} ${count === 1 ? 'row' : 'rows'}`;

export const sheetLabel = (title: string, rows: number): string =>
  `${title}, ${rowsWord(rows)}. Arrow keys move, Enter on a head sorts.`;

export const sheetPlace = (first: number, last: number, total: number): string =>
  `Rows ${plain(first)} to ${plain(last)} of ${plain(total)}`;

export const sortHint = (title: string, order: 'none' | 'ascending' | 'descending'): string =>
  order === 'none'
    ? `${title}, sort ascending`
    : order === 'ascending'
      ? `${title}, sorted ascending, sort descending`
      : `${title}, sorted descending, back to the order of the file`;

export const unknownValue = (): string => 'unknown';
export const valueUnderWay = (): string => 'loading';
export const noRows = (title: string): string => `${title}: no rows.`;

export const pictureFailed = (title: string, cause: string): string =>
  `The picture "${title}" could not be drawn: ${cause}. The table beside it holds the same numbers.`;
export const pictureUnderWay = (): string => 'Drawing the picture …';

export const tablesOfCell = (cell: string): string => `Tables of ${cell}`;
