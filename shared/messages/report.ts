/** Words of the printed report. */
import { count } from './words.ts';

export const asOfLine = (day: string): string => `As of ${day}`;
export const whatItIs = (): string =>
  'What years of combustion readings say about each unit: who to visit, why, how sure that is, and what to check first.';
export const raisedHead = (): string => 'Raised units';
export const nothingJudged = (): string => 'No cell of this notebook raised units, or the one that should have failed.';
export const nothingRaised = (): string => 'No unit is raised. That is no proof that all is well: see the cautions.';
export const indexShown = (shown: number, all: number): string =>
  shown < all ? `The first ${shown} of ${all} findings.` : '';
export const checkHead = (): string => 'Check first';
export const chanceWords = (chance: string, by: string): string =>
  by === '' ? `chance ${chance}` : `chance ${chance} by ${by}`;
export const falseWords = (rate: string): string => `${rate} of this list so far expected wrong`;
export const readingsWords = (readings: number): string => count(readings, 'reading', 'readings');
export const moreRaisedHead = (): string => 'Further raised units, without lanes';
export const moreRaised = (shown: number, all: number): string =>
  shown < all
    ? `The next ${shown} of ${all} further findings, by rank; all of them, with their evidence, are in raised.csv.`
    : 'By rank; their evidence is in raised.csv.';
export const accountHead = (): string => 'Account of the readings';
export const accountLine = (read: number, accepted: number, setAside: number, duplicates: number): string =>
  `${read} readings proposed by the files: ${accepted} accepted, ${setAside} set aside, ${duplicates} ${duplicates === 1 ? 'duplicate' : 'duplicates'}.`;
export const setAsideHead = (): string => 'Set aside';
export const setAsideShown = (shown: number, all: number): string =>
  shown < all ? `The first ${shown} of ${all}; the others are in set-aside.csv.` : '';
export const columnsHead = (): string => 'What the columns were taken for';
export const columnsLine = (named: number, other: number): string =>
  `${named} ${named === 1 ? 'column is' : 'columns are'} named as this notebook names ${named === 1 ? 'it' : 'them'}${other === 0 ? '.' : `, ${other} ${other === 1 ? 'is' : 'are'} not:`}`;
export const columnsShown = (shown: number, all: number): string =>
  shown < all ? `The first ${shown} of ${all}.` : '';
export const correctionsHead = (): string => 'Corrections made by hand';
export const correctionsLine = (
  all: number,
  inEffect: number,
  lifted: number,
  lost: number,
  overruled: number,
): string =>
  `${count(all, 'correction', 'corrections')}: ${inEffect} in effect, ${lifted} lifted off, ${lost} that no longer ${lost === 1 ? 'finds its' : 'find their'} reading, ${overruled} overruled by a later one. The readings themselves stay as imported.`;
export const correctionsShown = (shown: number, all: number): string =>
  shown < all ? `The first ${shown} of ${all}; the others are in corrections.csv.` : '';
export const correctionFate = (status: string, rows: number): string =>
  ({
    applied: `in effect, ${count(rows, 'reading', 'readings')}`,
    overruled: 'overruled by a later one',
    lifted: 'lifted off',
    lost: 'no longer finds its reading',
    open: 'not calculated',
  })[status] ?? status;
export const correctionColumns = (): readonly string[] => ['What', 'Imported as', 'Why', 'By', 'On', 'Effect'];
export const figuresHead = (): string => 'Figures of the raised units';
export const tableShown = (shown: number, all: number, file: string): string =>
  shown < all ? `The first ${shown} of ${all} rows; all are in ${file}.` : '';
export const defaultsHead = (): string => 'Defaults used, and what to keep in mind';
export const methodsHead = (): string => 'How it was worked out';
export const methodsIntro = (): string =>
  'Each cell of the notebook says in one sentence what it did; what stands underlined was chosen and can be changed.';
export const bySources = (sources: string): string => `By: ${sources}.`;
export const relationsHead = (): string => 'The derivations';
export const relationsIntro = (): string =>
  'In the notebook’s own formula language, as they are computed; uncertainties follow by partial derivatives with respect to what was measured.';
export const relationColumns = (): readonly string[] => ['What', 'Formula', 'Source'];
export const sourcesHead = (): string => 'Sources';
export const sourcesIntro = (): string =>
  'How far each was seen: seen, the text itself; secondary, a reprint or quotation; memory, neither, so check before relying on it; common practice, no written source.';
export const cautionsHead = (): string => 'Cautions';
export const failedLine = (cell: string, message: string): string => `Cell ${cell} failed: ${message}`;
export const askingLine = (cell: string, message: string, remedy: string): string =>
  `Cell ${cell} asks: ${message} ${remedy}`;
export const waitingLine = (cell: string, cells: string): string => `Cell ${cell} waits for ${cells}.`;
export const keyLine = (referenceAirC: number): string =>
  `One lane a fire, high above low, as tall as its band. Values are at reference air (${referenceAirC} °C, the site’s standard pressure), season taken out.`;
export const reasonName = (reason: string): string => REASONS[reason] ?? reason.replaceAll('_', ' ');
export const tierName = (tier: string): string => TIERS[tier] ?? tier;

const REASONS: Readonly<Record<string, string>> = {
  co_over_range: 'CO over the analyzer’s range',
  co_high: 'CO high',
  supply_over_maximum: 'Gas supply over the plate’s maximum',
  not_returned_to_service: 'Not returned to service',
  supply_under_minimum: 'Gas supply under the plate’s minimum',
  supply_drop_over: 'Supply drop over its limit',
  supply_drop_growing: 'Supply drop growing',
  out_of_tolerance: 'Out of tolerance',
  leaving_tolerance: 'Leaving tolerance',
  rich_in_summer: 'Rich in summer',
  flue_temperature_rising: 'Flue temperature rising',
  scatter_growing: 'Scatter growing',
  returns_quickly: 'Returns quickly after each visit',
  reading_doubtful: 'Reading doubtful',
  no_data: 'No data',
};
const TIERS: Readonly<Record<string, string>> = {
  safety: 'Safety',
  open: 'Left open',
  supply: 'Gas supply',
  tolerance: 'Tolerance',
  cost: 'Cost',
  data: 'Data',
};
export const checksHead = (): string => 'What the checks found in the readings';
export const checksShown = (shown: number, all: number): string =>
  `${shown < all ? `The first ${shown} of ${all} findings` : `${count(all, 'finding', 'findings')}`}, the gravest first; nothing was repaired. checks.csv has them all, with the lines of the files.`;

export const workingsHead = (): string => 'How the raised figures came about';
export const workingsIntro = (): string =>
  'Each figure is followed down to its reading: the relations in turn, with symbols, with numbers and units put in, and the result.';
/** Most figures that a report follows down to their readings: some three to a page. */
export const PRINTED_WORKINGS = 60;
export const workingsShown = (shown: number, findings: number): string =>
  `Here ${shown === 1 ? 'is the figure' : `are the figures`} of ${shown} of the ${findings} finding${findings === 1 ? '' : 's'}, the gravest first and at most ${PRINTED_WORKINGS}. A finding that rests on a test or on what is missing has no formula; any other number shows its working on the page and by the command working.`;
export const workingLink = (): string => 'Its working';
export const rankAndUnit = (rank: number, unit: string): string => `${rank}. ${unit}:`;
export const budgetWords = (parts: string, others: number): string =>
  `Of its variance: ${parts}${others === 0 ? '' : `, ${others === 1 ? 'one input' : `${others} inputs`} with less than 0.5 %${others === 1 ? '' : ' each'}`}.`;
export const workingFunctionsHead = (): string => 'Functions that the relations call';
