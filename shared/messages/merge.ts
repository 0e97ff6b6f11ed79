/** What is said of two notebooks laid side by side or made one. */
const quote = (text: string): string => JSON.stringify(text.length > 80 ? `${text.slice(0, 77)}...` : text);
const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

export const differentFleets = (first: string, second: string): string =>
  `The notebooks ${quote(first)} and ${quote(second)} have no data file in common, so they are of two different fleets; merge notebooks that began as copies of one.`;
export const conflict = (place: string, first: string, second: string): string =>
  `${place}: ${quote(first)} or ${quote(second)}`;
export const conflictsLeft = (count: number, example: string): string =>
  `merge: ${many(count, 'place differs', 'places differ')} and only you can say which counts (${example}); say --keep first or --keep second, in the order of the files, or make the notebooks agree.`;
export const merged = (count: number, cells: number, corrections: number, target: string): string =>
  `${count} notebooks made one: ${many(cells, 'cell', 'cells')}, ${many(corrections, 'correction', 'corrections')}, written to ${target}`;
export const twoNeeded = (found: number): string =>
  `merge: ${many(found, 'notebook is', 'notebooks are')} given; give at least two.`;
export const cellAdded = (cell: string, kind: string): string => `cell added: ${cell} (${kind})`;
export const cellRemoved = (cell: string, kind: string): string => `cell removed: ${cell} (${kind})`;
export const parameterChanged = (cell: string, parameter: string, before: string, after: string): string =>
  `${cell}: ${parameter} was ${quote(before)}, is ${quote(after)}`;
export const fieldChanged = (field: string, before: string, after: string): string =>
  `${field} was ${quote(before)}, is ${quote(after)}`;
export const nothingDiffers = (): string => 'The notebooks say the same.';
export const newlyRaised = (unit: string, reasons: string): string => `newly raised: ${unit} (${reasons})`;
export const cleared = (unit: string, reasons: string): string => `no longer raised: ${unit} (${reasons})`;
export const otherReasons = (unit: string, before: string, after: string): string =>
  `raised otherwise: ${unit} (was ${before}, is ${after})`;
export const sameRaised = (count: number): string =>
  `The same ${many(count, 'unit is', 'units are')} raised for the same reasons.`;
export const notRaised = (name: string): string =>
  `compare: ${name} has no list of raised units that could be calculated; see what calculate says of it.`;
export const compareOne = (): string =>
  'compare: one notebook is given, so two days are needed; give --from and --to, or a second notebook.';

export const dataAdded = (file: string): string => `data file added: ${file}`;
export const dataRemoved = (file: string): string => `data file removed: ${file}`;
export const dataChanged = (file: string): string => `data file changed: ${file}`;
export const correctionAdded = (what: string, lifted: boolean): string =>
  `correction added${lifted ? ', lifted off' : ''}: ${what}`;
export const correctionLifted = (what: string): string => `correction lifted off: ${what}`;
export const correctionLaidOn = (what: string): string => `correction laid back on: ${what}`;
export const correctionGone = (what: string): string => `correction not there: ${what}`;
