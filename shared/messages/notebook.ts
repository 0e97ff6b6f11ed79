/** What the notebook says about documents, cells, edits and data. Where, what is wrong, what was found, what to do. */
const quote = (text: string): string => `"${text.length > 60 ? `${text.slice(0, 57)}...` : text}"`;

export const notJson = (file: string, found: string): string =>
  `${file} is not a notebook: it is no complete JSON text (${found}); give a notebook file, or the copy that was saved last.`;
export const notNotebook = (file: string, found: string): string =>
  `${file} is not a notebook: its "format" should be "between-visits-notebook" but is ${quote(found)}; give a file that this program saved.`;
export const newerVersion = (file: string, found: string, known: number): string =>
  `${file} was saved by a newer version of this program: its format version is ${found}, and this program reads up to ${known}; update the program and open it again.`;
export const badField = (file: string, path: string, wanted: string, found: string): string =>
  `${file}: ${path} should be ${wanted} but is ${quote(found)}; correct it and open the file again.`;
export const forbiddenKey = (file: string, path: string): string =>
  `${file}: ${path} uses the reserved name "__proto__", which no notebook needs; remove it and open the file again.`;
export const tooDeep = (file: string, path: string, most: number): string =>
  `${file}: ${path} ... is nested more than ${most} deep, which no notebook is; give a file that this program saved.`;
export const duplicateCell = (file: string, name: string): string =>
  `${file}: two cells are named ${quote(name)}; give one of them another name.`;
export const duplicateData = (file: string, key: string): string =>
  `${file}: two data files are listed under the name ${quote(key)}; give one of them another name.`;
export const tooLarge = (cell: string, megabytes: number, limit: number): string =>
  `${cell} holds a text of ${megabytes} MB, and ${limit} MB is the most that a parameter carries; keep it as a file of its own.`;

export const unknownKind = (cell: string, kind: string): string =>
  `${cell} is a cell of kind ${quote(kind)}, which this program does not know; it is kept as it is, and the rest of the notebook works.`;
export const changedData = (name: string): string =>
  `The data file ${quote(name)} is not the one the notebook was saved with: its content has changed. The results below are those of the file as it is now.`;
export const absentData = (name: string): string =>
  `The data file ${quote(name)} is missing; open it from where it is now, and the cells that read it go on.`;
export const asks = (message: string, remedy: string): string => `${message} ${remedy}`;
export const cellFault = (cell: string, cause: string): string =>
  `${cell} met a fault in the program (${cause}); the other cells go on. Please report it with the notebook.`;

export const noSuchCell = (cell: string): string => `There is no cell named ${quote(cell)}; the notebook is unchanged.`;
export const noSuchParameter = (cell: string, parameter: string): string =>
  `${cell} has no parameter ${quote(parameter)}; the notebook is unchanged.`;
export const nameTaken = (cell: string): string => `There is already a cell named ${quote(cell)}; choose another name.`;
export const badCellName = (cell: string): string =>
  `${quote(cell)} cannot name a cell: a name begins with a letter and holds letters, digits, "-", "_" and spaces, at most 60; choose another.`;
export const noSuchKind = (kind: string): string => `There is no kind of cell named ${quote(kind)}.`;
export const badSetting = (setting: string, wanted: string, found: string): string =>
  `The setting ${setting} must be ${wanted}, it is ${found}; give such a value.`;
export const badDate = (text: string): string =>
  `${quote(text)} is not a date; write it as YYYY-MM-DD, for instance 2026-03-31.`;
export const noSuchTable = (cell: string, table: string): string => `${cell} has no table named ${quote(table)}.`;
export const noResult = (cell: string): string => `${cell} has no result to show.`;
export const nothingToUndo = (): string => 'There is nothing to undo.';
export const nothingToRedo = (): string => 'There is nothing to do again.';
export const noSuchCorrection = (cell: string, id: string): string =>
  `${cell} has no correction ${quote(id)}; the notebook is unchanged.`;
export const readingMoved = (): string => 'The readings were calculated anew meanwhile; choose the reading again.';
