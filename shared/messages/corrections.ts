/** What is said of corrections. Where, what is wrong, what was found, what to do. */
const quote = (text: string): string => `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;
const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

export const notList = (): string =>
  'corrections: the list of corrections is no list; give a list, which may be empty.';
export const notCell = (found: string): string =>
  `corrections: "readings" should name a cell, but is ${quote(found)}; name the cell whose readings are corrected.`;
export const badEntry = (place: number, field: string, wanted: string, found: string): string =>
  `corrections: entry ${place}: ${field} should be ${wanted}, but is ${quote(found)}; correct or remove the entry.`;
export const unknownAction = (place: number, found: string, known: string): string =>
  `corrections: entry ${place}: ${quote(found)} is no kind of correction; the kinds are ${known}.`;
export const badValue = (place: number, column: string, found: string): string =>
  `corrections: entry ${place}: ${quote(found)} is no value for ${column}; give one as the column holds it, in its unit.`;
export const unknownColumn = (place: number, found: string): string =>
  `corrections: entry ${place}: ${quote(found)} is no column that can be corrected; name a column of the readings.`;
export const sameTwice = (place: number): string =>
  `corrections: entry ${place} is there twice; remove one of the two.`;
export const noReadings = (cell: string): string =>
  `corrections: ${cell} holds no table of accepted readings; name a readings cell.`;

export const none = (): string => 'No corrections; the readings are as imported.';
export const answer = (effective: number, rows: number, aside: number, lifted: number, lost: number): string =>
  [
    `${many(effective, 'correction touches', 'corrections touch')} ${many(rows, 'reading', 'readings')}`,
    aside > 0 ? `${aside} of them set aside` : '',
    lifted > 0 ? `${lifted} lifted off` : '',
    lost > 0 ? `${lost} no longer ${lost === 1 ? 'finds its' : 'find their'} reading` : '',
  ]
    .filter((part) => part !== '')
    .join(', ')
    .concat('.');
export const lost = (what: string, reason: string, initials: string, madeOn: string): string =>
  `The correction of ${what} (${initials}, ${madeOn}: ${reason}) no longer finds its reading; see whether the export has changed, and lift the correction or make it anew.`;
export const setAsideBy = (initials: string, madeOn: string, reason: string): string =>
  `set aside by ${initials} on ${madeOn}: ${reason}`;
export const rowWords = (unit: string, takenAt: string, fire: string, state: string): string =>
  `${unit}, ${takenAt}, ${fire} fire, ${state.replaceAll('_', ' ')}`;
export const unitsWords = (first: string, second: string): string => `${first} and ${second}`;
export const corrections = (count: number): string => many(count, 'correction', 'corrections');
