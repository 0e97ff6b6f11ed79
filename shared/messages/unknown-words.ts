/** What the import says about words for fire and state that nobody knows, and numbers that are written otherwise. */
const quote = (text: string): string => `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;

export const unknownWordRemark = (file: string, head: string, word: string, rows: number, line: number): string =>
  `${file}: nobody knows what ${quote(word)} in the column ${quote(head)} means; ${rows === 1 ? 'the row with it is' : `the ${rows} rows with it are`} set aside, the first on line ${line}. Say at the columns of the file what the word means.`;
export const otherMarksRemark = (file: string, rows: number, line: number, example: string, comma: boolean): string =>
  `${file}: ${rows} rows are set aside because their numbers have a decimal ${comma ? 'comma' : 'point'}, such as ${quote(example)}, while those at the beginning of the file have a decimal ${comma ? 'point' : 'comma'}; the first is on line ${line}. If both are meant, export the file with one mark, or say in a profile that each number is read by its own.`;
export const meaningOf = (word: string): string => `What the word ${quote(word)} means`;
export const wordAside = (word: string): string => `${quote(word)}: its rows are set aside`;
export const wordMeans = (word: string, meaning: string): string => `${quote(word)} is ${meaning}`;
export const noFireNamed = (): string => 'a fire without a name';
export const stateNotKnown = (): string => 'an unknown state';
