import { groupedDigits } from '../quantities/grouped-digits.ts';

/** Every sentence of the page that is not a cell's own. Named functions of strings and numbers. */

export const plainCount = (count: number): string => groupedDigits(String(count));

export const rowsWord = (count: number): string => `${plainCount(count)} ${count === 1 ? 'row' : 'rows'}`;

export const sheetLabel = (title: string, rows: number): string =>
  `${title}, ${rowsWord(rows)}. Arrow keys move, Enter on a head sorts.`;

export const sheetPlace = (first: number, last: number, total: number): string =>
  `Rows ${plainCount(first)} to ${plainCount(last)} of ${plainCount(total)}`;

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

// The flow at the side.
export const flowLabel = (): string => 'Flow: how the rows run from cell to cell';
export const threadTitle = (from: string, to: string, rows: number): string => `${from} → ${to}: ${rowsWord(rows)}`;
export const setAsideWord = (count: number): string => `${plainCount(count)} set aside`;
export const duplicatesWord = (count: number): string =>
  `${plainCount(count)} ${count === 1 ? 'duplicate' : 'duplicates'}`;
export const flowFolded = (summary: string): string => `The flow: ${summary}`;
export const flowSummary = (
  done: number,
  cells: number,
  failed: number,
  asking: number,
  running: number,
  unknown: number,
): string => {
  const rest = [
    failed > 0 ? `${failed} failed` : '',
    asking > 0 ? `${asking} ${asking === 1 ? 'asks' : 'ask'} you` : '',
    running > 0 ? `${running} at work` : '',
    unknown > 0 ? `${unknown} kept, not known here` : '',
  ].filter((part) => part !== '');
  return `${done} of ${cells} cells finished${rest.length > 0 ? `, ${rest.join(', ')}` : ''}`;
};

// What a cell is at.
export const phaseRunning = (share: number): string =>
  share > 0 && share < 1 ? `at work, ${Math.floor(share * 100)} %` : 'at work';
export const phaseFailed = (): string => 'stopped: an error';
export const phaseUnknown = (): string => 'kept as it is; not known here';
export const phaseAsking = (): string => 'asks you';
export const phaseWaiting = (cells: string): string => (cells === '' ? 'waits' : `waits for ${cells}`);
export const phaseIdle = (): string => 'not calculated yet';
export const stopHere = (): string => 'Stop here';
export const goOn = (): string => 'Go on';
export const calculationStopped = (left: number): string =>
  left === 0
    ? 'Stopped; every cell had been calculated.'
    : `Stopped: ${left} ${left === 1 ? 'cell is' : 'cells are'} as before. Go on whenever you like.`;
export const phaseStale = (): string => 'old result: calculated before your last change';
/** Most messages name their cell first; where one does not, it is put in front. */
export const errorOf = (cell: string, message: string): string =>
  message.startsWith(cell) ? message : `${cell}: ${message}`;
export const staleKept = (): string => 'Below is the last good result. It does not know of your last change.';
export const severityWord = (severity: string): string =>
  ({ danger: 'Danger', warning: 'Warning', note: 'Note' })[severity] ?? severity;
export const notesWord = (count: number): string =>
  count === 1 ? '1 note: a default or a method to know of' : `${count} notes: defaults and methods to know of`;
export const detailsHead = (): string => 'More that can be changed';
export const whyHead = (): string => 'Why calculated?';

// Blanks.
const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
export const blankLabel = (label: string, text: string): string => `${capital(label)}: ${text}. Press Enter to change.`;
export const blankHint = (label: string, unit: string): string =>
  `${capital(label)}${unit === '' ? '' : `, in ${unit}`}. Enter keeps it, Escape leaves it as it was.`;
export const noCell = (label: string): string => `no ${label}`;
export const emptyBlank = (): string => 'not given';
export const notANumber = (label: string, found: string): string =>
  `${capital(label)} takes a number; "${found}" is none. Type digits, with a point for decimals.`;
export const numberOutside = (label: string, found: number, minimum: string, maximum: string, unit: string): string => {
  const range =
    minimum === ''
      ? `at most ${maximum}`
      : maximum === ''
        ? `at least ${minimum}`
        : `between ${minimum} and ${maximum}`;
  return `${capital(label)} must be ${range}${unit === '' ? '' : ` ${unit}`}; found ${found}. Type another number.`;
};
export const numberNeeded = (label: string): string => `${capital(label)} cannot be empty. Type a number.`;
export const addFilesWord = (): string => 'Add files …';
export const filesDone = (): string => 'Done';
export const filesOf = (label: string): string => `${capital(label)} of this cell`;
export const answerThis = (): string => 'Answer';
export const answerNeeded = (): string => 'Type the answer first.';
export const openFilesWord = (): string => 'Open files …';

// The head of the page.
export const productName = (): string => 'Between Visits';
export const plateNotebook = (): string => 'Notebook';
export const plateAsOf = (): string => 'Looking from';
export const plateReadings = (): string => 'Readings accepted';
export const plateSetAside = (): string => 'Set aside';
export const plateDuplicates = (): string => 'Duplicates';
export const pageTitle = (notebook: string): string =>
  notebook === '' ? 'Between Visits' : `${notebook} · Between Visits`;
export const openOwn = (): string => 'Open your own files';
export const undoWord = (): string => 'Undo';
export const redoWord = (): string => 'Redo';
export const saveNotebook = (): string => 'Save notebook';
export const saveFiles = (): string => 'Save results and report';
export const savedFiles = (count: number): string =>
  `${count} ${count === 1 ? 'file' : 'files'} saved to your downloads.`;
export const nothingToSave = (): string => 'Nothing is calculated yet; there are no results to save.';
export const notADay = (found: string): string =>
  `"${found}" is no day that the notebook can look from. Write it as year, month, day: 2026-11-15.`;
export const skipToRaised = (): string => 'Skip to the raised units';
export const lightWord = (light: string): string =>
  light === 'day' ? 'Colors: day' : light === 'night' ? 'Colors: night' : 'Colors: as this device';
export const openingSample = (): string => 'Opening the sample campus …';
export const openingOwn = (files: number): string => `Reading your ${files === 1 ? 'file' : `${files} files`} …`;
export const moreFailed = (count: number): string =>
  `${count} more ${count === 1 ? 'cell' : 'cells'} could not be calculated; shut valves in the flow mark them.`;
export const goTo = (cell: string): string => `Go to ${cell}`;
export const openFailed = (cause: string): string => `The notebook could not be opened: ${cause}`;
export const stopped = (cause: string): string =>
  `Calculating has stopped (${cause}). Reload the page: the notebook is kept and is offered again.`;
export const nothingOpen = (): string =>
  'This notebook has no cells yet. Open your readings and your register to begin.';
export const changeFollowed = (cells: number): string =>
  cells === 0 ? 'Nothing else depends on it.' : `${cells} ${cells === 1 ? 'cell' : 'cells'} followed your change.`;
export const sampleBanner = (): string =>
  'An invented campus to look around in; no real site. Open your own files to see your own units.';

// Own files.
export const trayHead = (): string => 'Your own files';
export const trayText = (): string =>
  'Choose or drop CSV files: readings from the analyzer, the register of units, and events and fuel use where you have them; or a notebook that you saved, with its files. They stay on this computer; nothing is sent anywhere.';
export const trayChoose = (): string => 'Choose files …';
export const trayFolder = (): string => 'A whole folder';
export const trayLeftOut = (files: number, names: string): string =>
  `${files === 1 ? 'A file of the folder is no table and was' : `${files} files of the folder are no tables and were`} left out: ${names}${files > 3 ? ' ...' : ''}.`;
export const trayDrop = (): string => 'Drop the files here';
export const trayRole = (file: string): string => `What ${file} holds`;
export const trayRemove = (file: string): string => `Leave out ${file}`;
export const trayOpen = (): string => 'Open these files';
export const trayClose = (): string => 'Back to the notebook';
export const trayNeedsReadings = (): string => 'Add at least one file of readings.';
export const trayWantsRegister = (): string =>
  'Add the register of units if there is one: one line a unit is enough; what it leaves out is named and replaced by cautious defaults.';
export const roleReadings = (): string => 'Readings';
export const roleRegister = (): string => 'Register of units';
export const roleEvents = (): string => 'Events';
export const roleNotebook = (): string => 'Saved notebook';
export const roleFuelUse = (): string => 'Fuel use';
export const fileUnreadable = (file: string, cause: string): string =>
  `${file} could not be read: ${cause}. Close it in other programs and choose it again.`;
export const fileEmpty = (file: string): string => `${file} is empty. Choose the file that the analyzer exported.`;
export const fileBinary = (file: string): string =>
  `${file} is no text file: it holds bytes that no CSV file has. Export it as CSV and choose that.`;
export const fileOfOtherKind = (file: string, kind: string): string =>
  `${file} is ${kind}: it holds no table of readings. Choose a CSV file, or a notebook that was saved here.`;
export const roleUnknown = (): string => 'Say what it holds …';
export const trayNeedsRole = (file: string): string =>
  `Nothing in the first lines of ${file} tells what it holds. Say what it is, or leave it out.`;
export const bytesWord = (bytes: number): string =>
  bytes < 1000
    ? `${bytes} bytes`
    : bytes < 1e6
      ? `${(bytes / 1e3).toFixed(bytes < 1e4 ? 1 : 0)} kB`
      : `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;

export const cautionsHead = (): string => 'Before you rely on this';
export const ownNotebook = (): string => 'Campus review';
export const sampleMissing = (file: string, status: number): string =>
  `${file} of the sample campus was not served (status ${status}). Serve the whole folder that the build made, or open your own files.`;

// The raised units.
export const tierHead = (tier: string): string =>
  ({
    safety: 'Safety first',
    open: 'Not returned to service',
    supply: 'Gas supply',
    tolerance: 'Out of, or leaving, tolerance',
    cost: 'Costs fuel',
    data: 'Cannot be judged',
  })[tier] ?? tier;
const REASONS: Readonly<Record<string, string>> = {
  co_over_range: 'CO over the analyzer’s range',
  co_high: 'CO too high',
  supply_over_maximum: 'Gas supply above the maximum',
  not_returned_to_service: 'Not returned to service',
  supply_under_minimum: 'Gas supply below the minimum',
  supply_drop_over: 'Supply drop over its limit',
  supply_drop_growing: 'Supply drop growing',
  out_of_tolerance: 'Out of tolerance',
  leaving_tolerance: 'Leaving tolerance',
  rich_in_summer: 'Will run rich in summer',
  flue_temperature_rising: 'Flue temperature rising',
  scatter_growing: 'Settings no longer hold',
  returns_quickly: 'Needs visits again and again',
  reading_doubtful: 'A reading is doubtful',
  no_data: 'Not enough readings to judge',
};
export const reasonHead = (reason: string): string => REASONS[reason] ?? reason.replaceAll('_', ' ');
export const unitsWord = (count: number): string => `${plainCount(count)} ${count === 1 ? 'unit' : 'units'}`;
export const checkFirst = (): string => 'Check first';
export const chanceBy = (percent: string, by: string): string =>
  by === '' ? `${percent} likely` : `${percent} likely by ${by}`;
export const measuredFact = (): string => 'measured';
export const readingsUsed = (count: number): string => `from ${count} ${count === 1 ? 'reading' : 'readings'}`;
export const expectWrong = (percent: string): string => `expect about ${percent} of such entries to be wrong`;
export const onFire = (fire: string, fuel: string): string =>
  [
    fire === '' || fire === 'unnamed' ? '' : fire === 'single' ? 'single fire' : `${fire} fire`,
    fuel.replaceAll('_', ' '),
  ]
    .filter((part) => part !== '')
    .join(', ');
export const nothingRaised = (): string =>
  'No unit is raised. That does not show that any unit is safe today: it says only that these readings give no reason to go sooner.';
export const lanesUnderWay = (): string => 'Drawing the fire lanes …';
export const lanesHow = (): string =>
  'How to read the fire lanes: each lane is as tall as its band. Hollow marks were read as found, filled ones as left. The line is the level, its shade the range it lies in with 95 % confidence; right of the day mark it runs on into the future.';
export const moreRaised = (count: number, all: number): string => `Show ${plainCount(count)} more of ${unitsWord(all)}`;
export const unitsAtLeast = (count: number): string => `${unitsWord(count)} or more`;
export const allRaisedTable = (): string => 'The same as a table';
export const lanesFind = (): string => 'Find a unit';
export const lanesShown = (first: number, last: number, total: number): string =>
  total === 1 ? '1 unit' : `Units ${plainCount(first)} to ${plainCount(last)} of ${plainCount(total)}`;
export const lanesNone = (wanted: string): string => `No unit is called "${wanted}". Type part of its id.`;
export const lanesPrevious = (): string => 'Previous units';
export const lanesNext = (): string => 'Next units';
export const itsReadings = (unit: string): string => `Readings of ${unit}, each with its file and line`;

// The account of the readings.
export const accountHead = (): string => 'What became of every reading';
const readingsWord = (count: number): string => `${plainCount(count)} ${count === 1 ? 'reading' : 'readings'}`;
export const accountAddsUp = (read: number, accepted: number, setAside: number, duplicates: number): string =>
  `${readingsWord(read)} = ${plainCount(accepted)} accepted + ${plainCount(setAside)} set aside + ${duplicatesWord(duplicates)}`;
export const accountShort = (read: number, accepted: number, setAside: number, duplicates: number): string =>
  `${readingsWord(read)}, but ${plainCount(accepted)} accepted, ${plainCount(setAside)} set aside and ${duplicatesWord(duplicates)} do not add up to them. Please report this file.`;
