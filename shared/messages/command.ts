/** What the command line says. One line each: where, what is wrong, what was found, what to do. */
const quote = (text: string): string => JSON.stringify(text.length > 200 ? `${text.slice(0, 197)}...` : text);

export const unknownCommand = (found: string, known: string): string =>
  `${quote(found)} is no command; the commands are ${known}.`;
export const unknownFlag = (command: string, found: string, known: string): string =>
  `${command}: ${quote(found)} is no option of it; its options are ${known}.`;
export const strayArgument = (command: string, found: string): string =>
  `${command}: ${quote(found)} stands before any option; put the option it belongs to in front of it, for instance --readings.`;
export const flagTwice = (command: string, flag: string): string =>
  `${command}: --${flag} is given twice; give it once.`;
export const flagWithoutValue = (command: string, flag: string): string =>
  `${command}: --${flag} has nothing after it; put its value there.`;
export const tooManyValues = (command: string, flag: string, found: string): string =>
  `${command}: --${flag} takes one value, but ${quote(found)} follows as well; remove it.`;
export const missingFlag = (command: string, flag: string, usage: string): string =>
  `${command}: --${flag} is missing; the whole command is: ${usage}`;
export const missingFiles = (command: string, usage: string): string =>
  `${command}: no file is given; the whole command is: ${usage}`;
export const oneNotebook = (command: string, count: number): string =>
  `${command}: ${count} notebooks are given; give one at a time.`;
export const badDay = (command: string, flag: string, found: string): string =>
  `${command}: --${flag} should be a date of the calendar written YYYY-MM-DD, but is ${quote(found)}; give it as 2026-03-31, for instance.`;
export const badNumber = (command: string, flag: string, found: string, least: number, most: number): string =>
  `${command}: --${flag} should be a whole number from ${least} to ${most}, but is ${quote(found)}; give it as 365, for instance.`;
export const badChoice = (command: string, flag: string, found: string, options: string): string =>
  `${command}: --${flag} should be one of ${options}, but is ${quote(found)}; give one of these.`;

export const fileMissing = (path: string): string =>
  `${path}: there is no such file; check the name and the folder it is in.`;
export const fileIsFolder = (path: string): string =>
  `${path} is a folder, and a file is needed; name the files in it.`;
export const folderWithoutTables = (path: string): string =>
  `${path} is a folder without any table that can be read here; give a folder with exports in it, or name the files.`;
export const leftOutOfFolder = (path: string, reason: string): string => `${path} is left out: ${reason}`;
export const otherKindInFolder = (path: string, kind: string): string =>
  `${path} is left out: it is no export of readings but ${kind === 'fuel-use' ? 'a fuel-use table' : kind === 'register' ? 'a register' : 'an events table'}.`;
export const fileUnreadable = (path: string, cause: string): string =>
  `${path} cannot be read (${cause}); check who may read it.`;
export const fileEmpty = (path: string): string => `${path} is empty (0 bytes); give the export again.`;
export const fileNotJson = (path: string, cause: string): string =>
  `${path} is no complete JSON text (${cause}); give a profile that this program printed or saved.`;
export const fileTooLong = (path: string, megabytes: number): string =>
  `${path} has ${megabytes} MB, far more than a notebook or a profile has; give another file.`;

export const outIsFile = (path: string): string =>
  `${path} is a file, and the results need a folder; give another name with --out.`;
export const outUnwritable = (path: string, cause: string): string =>
  `${path} cannot be written to (${cause}); give a folder with --out that you may write to.`;

export const dataMissing = (notebook: string, name: string, folder: string): string =>
  `${notebook} reads the data file ${quote(name)}, which is not in ${folder}; put it there, or correct its name in the notebook.`;
export const question = (cell: string, message: string, remedy: string): string => `${cell}: ${message} ${remedy}`;
export const cellFailed = (cell: string, message: string): string =>
  message.startsWith(`${cell} `) || message.startsWith(`${cell}:`) ? message : `${cell}: ${message}`;
export const cellWaits = (cell: string, cells: string): string => `${cell}: not calculated, it waits for ${cells}.`;
export const failOn = (tier: string, units: number): string =>
  `--fail-on ${tier}: ${units} ${units === 1 ? 'unit is' : 'units are'} raised there; see raised.csv.`;
export const fault = (cause: string): string =>
  `The program met a fault of its own (${cause}); nothing was written. Please report it with the command you gave.`;

export const written = (files: number, folder: string): string => `${files} files written to ${folder}`;
export const fileAccount = (
  file: string,
  read: number,
  accepted: number,
  setAside: number,
  duplicates: number,
): string =>
  `${file}: ${read} ${read === 1 ? 'reading' : 'readings'} proposed; ${accepted} accepted, ${setAside} set aside, ${duplicates} ${duplicates === 1 ? 'duplicate' : 'duplicates'} of others.`;
export const setAsideLine = (file: string, line: string, reason: string): string =>
  `  ${file}, line ${line}: ${reason}`;
export const moreSetAside = (count: number): string => `  and ${count} more`;
export const nothingWritten = (): string => 'Nothing was written.';

export const raisedHead = (title: string, asOf: string): string => `${title}, as of ${asOf}`;
export const noneRaised = (): string => 'No unit is raised.';
export const moreRaised = (count: number): string => `and ${count} more, in the notebook`;
export const serving = (address: string): string => `The notebook is open at ${address}   (Ctrl+C ends it)`;
export const portTaken = (port: number): string =>
  `Port ${port} is taken by another program; choose another one, for instance: PORT=${port < 65_000 ? port + 1 : 4173} npm start`;
export const portForbidden = (port: number, cause: string): string =>
  `Port ${port} cannot be opened (${cause}); choose another one, for instance: PORT=4173 npm start`;
export const badPort = (found: string): string =>
  `PORT should be a whole number from 1 to 65535, but is ${quote(found)}; choose one, for instance: PORT=4173 npm start`;
export const pageMissing = (folder: string): string =>
  `The page is not built: ${folder} is not there; run npm run build and start again.`;
export const sampleMissing = (path: string): string =>
  `The sample campus is not there: ${path} is missing; get the sample-data folder again.`;

// What evidence proposes, a line a unit.
const namingWords = (kind: string, unit: string, readings: number, wouldBe: string, evidence: string): string =>
  `${unit}: ${kind} of ${readings} ${readings === 1 ? 'reading' : 'readings'} (${wouldBe}) by ${evidence}`;
export const openNaming = (kind: string, unit: string, readings: number, wouldBe: string, evidence: string): string =>
  `  proposed for ${namingWords(kind, unit, readings, wouldBe, evidence)}; --accept "${kind}:${unit}" takes it, --accept ${kind} all of the kind`;
export const acceptedNaming = (
  kind: string,
  unit: string,
  readings: number,
  wouldBe: string,
  evidence: string,
): string => `  accepted for ${namingWords(kind, unit, readings, wouldBe, evidence)}`;
export const moreNamings = (more: number): string => `  and ${more} further proposals`;

// Where a reading stands in its file.
export const originHead = (
  unit: string,
  takenAt: string,
  fire: string,
  state: string,
  file: string,
  line: number,
): string => `${unit}, ${takenAt}, ${fire} fire, ${state.replaceAll('_', ' ')}: ${file}, line ${line}`;
export const originCell = (head: string, position: number, text: string, field: string, value: string): string =>
  `  ${Number.isNaN(position) ? '' : `column ${position}, `}"${head}": "${text}" is ${field} ${value}`;
export const originByHead = (field: string, value: string, head: string): string =>
  `  ${field} ${value} is named at the head of its columns, such as "${head}"`;
export const originElsewhere = (field: string, value: string): string =>
  `  ${field} ${value} stands in no column of the line: it was told for the whole file, follows from the import, or is a mean of a log`;
export const notAsImported = (file: string): string =>
  `${file} is not there as it was when it was read; put the same file back and ask again.`;
