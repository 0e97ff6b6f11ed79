/** What is said around the working of a number: on the page, in the report, in the terminal. */
import { statedNumber } from '../quantities/stated-number.ts';
import { fireName, fuelName } from './lanes.ts';

/** An uncertainty: two significant digits. */
const digits = (sd: number): string => statedNumber(0, sd)?.sd ?? '0';
const kelvin = (unit: string): string => (unit === '' ? '' : ` ${unit === '°C' ? 'K' : unit}`);

export const noSuchReading = (unit: string, day: string, fire: string, state: string): string =>
  `working: no reading of unit ${unit}${day && ` on ${day}`}${fire && ` at fire ${fire}`}${state && ` in state ${state}`} was accepted; see accepted.csv for those there are.`;
export const noSuchRow = (cell: string, unit: string, fire: string): string =>
  `working: cell ${cell} has no row of unit ${unit}${fire && ` at fire ${fire}`}; look into its file for those there are.`;
export const noSuchCell = (cell: string): string =>
  `working: the notebook has no cell ${cell}; name one of its cells with --cell.`;
export const noColumnToChoose = (cell: string, column: string): string =>
  `working: the rows of cell ${cell} have no ${column} to choose by; leave that out.`;
export const notWithNotebook = (flag: string): string =>
  `working: --${flag} was given beside a notebook, which says for itself what it reads and how; leave one of the two out.`;
export const cannotWork = (cell: string): string =>
  `The cell ${cell} has no numbers that show their working; those of derive do.`;
export const noResult = (cell: string): string =>
  `The cell ${cell} has no result yet, so no number of it can show its working; look again when it has finished.`;

/** "COB-1, 2016-09-29 08:53, high fire, as found, natural gas" */
export const readingWords = (unit: string, takenAt: string, fire: string, state: string, fuel: string): string =>
  [
    unit,
    takenAt.replace('T', ' '),
    fire === '' || fire === 'unnamed' ? '' : `${fireName(fire).toLowerCase()} fire`,
    state === '' || state === 'unknown' ? '' : state.replace('_', ' '),
    fuel === '' ? '' : fuelName(fuel),
  ]
    .filter((part) => part !== '')
    .join(', ');
export const workingHead = (title: string, result: string): string => `${title}: ${result}`;

export const workingName = (): string => 'Working';
export const workingOf = (title: string): string => `Working of ${title}`;
export const showWorking = (): string => 'Show its working';
/** As heard: what the button says, and of what. */
export const showWorkingOf = (what: string): string => `${showWorking()}: ${what}`;
export const putAwayOf = (what: string): string => `${putAway()}: ${what}`;
/** The head of a unit's derived numbers. */
export const itsFigures = (unit: string): string => `What was derived from the readings of ${unit}`;
export const workedNumber = (): string => 'Enter shows its working';
export const putAway = (): string => 'Put away';
export const workingUnderWay = (): string => 'The working is being put together.';
export const workingHint = (): string =>
  'A number with dots below shows how it came about: click it, or go to it and press Enter.';

export const readingsHead = (count: number): string => (count === 1 ? 'The reading' : 'The readings');
export const workingOrigin = (file: string, line: number): string =>
  file === '' ? 'From the notebook itself.' : `From ${file}, line ${line}.`;
/** What was put right after the import; the line of the file stays as it was written. */
export const amendedHead = (count: number): string =>
  count === 1 ? 'Put right by a correction' : `Put right by ${count} corrections`;
export const originColumns = (): readonly [string, string, string] => ['Column', 'Its head', 'As it stands there'];
/** "column 11, o2_pct: 4.8" */
export const originCell = (position: number, head: string, text: string): string =>
  `${Number.isFinite(position) ? `column ${position}, ` : ''}${head}: ${text}`;
export const originGone = (): string => 'The file is no longer as it was when it was read, so its line is not shown.';
export const originLine = (): string => 'The line as it stands in the file';

export const inputsHead = (): string => 'What goes in';
export const inputWords = (title: string, symbol: string, stated: string, sd: string): string =>
  `${title}: ${symbol} = ${stated}${sd === '' ? '' : ` ± ${sd}`}`;
export const onwardHead = (count: number): string =>
  count === 1 ? 'The number it rests on' : 'The numbers it rests on';
export const fromCell = (cell: string): string => `worked out by ${cell}`;
export const stepsHead = (count: number): string =>
  count === 1 ? 'The relation' : `The ${count} relations, one after the other`;

export const sdWords = (sd: number, unit: string): string =>
  Number.isFinite(sd) ? (sd === 0 ? 'taken as exact' : `± ${digits(sd)}${kelvin(unit)}`) : 'uncertainty unknown';
export const budgetHead = (): string => 'Where its uncertainty comes from';
export const workingSd = (sd: number, unit: string): string => {
  if (!Number.isFinite(sd)) return 'Its uncertainty is unknown.';
  return sd === 0 ? 'It is taken as exact.' : `Its standard uncertainty is ${digits(sd)}${kelvin(unit)}.`;
};
export const budgetIntro = (inputs: number): string =>
  inputs === 1 ? 'All of its variance comes from one input:' : 'Each input’s part of its variance:';
/** "97.7 %"; a part too small for a digit is said to be one. */
export const shareWords = (percent: number): string => (percent < 0.05 ? 'under 0.1 %' : `${percent.toFixed(1)} %`);
export const shareDetail = (contribution: number, unit: string): string =>
  `${digits(Math.abs(contribution))}${kelvin(unit)}`;

export const functionsHead = (count: number): string => (count === 1 ? 'The function in it' : 'The functions in it');
export const sourcesHead = (count: number): string => (count === 1 ? 'The source' : 'The sources');
/** How a source is known, in words. */
export const standingWords = (standing: string): string =>
  ({
    seen: 'seen',
    secondary: 'known from a reprint or quotation',
    memory: 'known from memory, to be checked',
    'common practice': 'common practice, no source',
  })[standing] ?? standing;
