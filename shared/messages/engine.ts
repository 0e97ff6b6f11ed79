/** Why a cell was, or was not, calculated again; and what stands in its way. One sentence each. */
const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

export const neverCalculated = (): string => 'Not calculated yet.';
export const calculatedFirst = (): string => 'Calculated for the first time.';
export const calculatedForParameters = (names: readonly string[]): string =>
  names.length === 0
    ? 'Calculated again because its settings changed.'
    : `Calculated again because ${list(names)} changed.`;
export const calculatedForReads = (cells: readonly string[]): string =>
  `Calculated again because what it reads from ${list(cells)} changed.`;
export const takenFromStore = (): string =>
  'Not calculated again: the same parameters and inputs were calculated before, and that result was kept.';
export const calculatedSinceLetGo = (): string =>
  'Calculated again: this result had been kept, and was let go to make room for newer ones.';
export const nothingChanged = (): string => 'Not calculated again: nothing that it reads has changed.';
export const cameOutEqual = (cells: readonly string[]): string =>
  `Not calculated again: ${list(cells)} changed, but what this cell reads of ${cells.length === 1 ? 'it' : 'them'} came out equal.`;
export const judgedAgain = (why: string): string => `Judged again without fitting again. ${why}`;
export const waitsFor = (cells: readonly string[]): string =>
  `Not calculated: it waits for ${list(cells)}, which ${cells.length === 1 ? 'has' : 'have'} no result.`;
export const cyclePath = (path: readonly string[]): string =>
  `These cells read one another in a circle: ${path.join(' reads ')}; let one of them read something else.`;
export const missingCell = (cell: string, missing: string): string =>
  missing === ''
    ? `${cell} reads another cell, and none is named; choose it in the sentence.`
    : `${cell} reads a cell named ${missing}, which the notebook does not have; name another cell or add it.`;
