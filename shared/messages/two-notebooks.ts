/** What the page says where two notebooks are made one or laid side by side. Named functions of strings and numbers. */
const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
const cut = (text: string): string => (text.length > 160 ? `${text.slice(0, 157)}…` : text);

export const openPanel = (): string => 'Merge or compare …';
export const panelHead = (): string => 'Two notebooks, or two days';
export const panelText = (): string =>
  'A notebook that went out on another device comes back into this one, or is laid beside it: what was decided otherwise, and which units that raises or clears.';
export const chooseOther = (): string => 'Choose the other notebook …';
export const otherIs = (file: string): string => `The other notebook: ${file}`;
export const mergeIt = (): string => 'Take it into this one';
export const compareIt = (): string => 'Compare this one with it';
export const daysHead = (): string => 'This notebook, looking from two days';
export const fromDay = (): string => 'From';
export const toDay = (): string => 'to';
export const compareDays = (): string => 'Compare the two days';
export const closePanel = (): string => 'Back to the notebook';
export const merging = (): string => 'Laying the two together …';
export const comparing = (): string => 'Calculating both …';
export const notADay = (found: string): string => `"${found}" is no day. Write it as year, month, day: 2026-11-15.`;

export const nothingNew = (file: string): string =>
  `${file} holds nothing that this notebook has not; nothing was changed.`;
export const merged = (file: string, settled: number): string =>
  `${file} is taken in${settled === 0 ? '' : `, ${settled} ${settled === 1 ? 'question' : 'questions'} settled by you`}. It is one step; Undo takes it back.`;
export const questionOf = (at: number, count: number): string =>
  count === 1
    ? 'The two contradict each other in one place'
    : `The two contradict each other: question ${at} of ${count}`;
export const hereHolds = (): string => 'This notebook';
export const thereHolds = (file: string): string => file;
export const keepThis = (value: string): string => `Keep: ${cut(value)}`;
export const takeThat = (value: string): string => `Take: ${cut(value)}`;
export const leaveMerging = (): string => 'Leave it; change nothing';
export const mergeLeft = (): string => 'Nothing was changed.';

export const theTitle = (): string => 'The title of the notebook';
export const theOrder = (): string => 'The order of the cells';
export const theSetting = (setting: string): string => `The setting ${setting}`;
export const theContent = (file: string): string => `The content of the data file ${file}`;
export const theKind = (cell: string): string => `What ${cell} is`;
export const theParameter = (cell: string, parameter: string): string => `${cell}: ${parameter}`;
export const sameCorrected = (): string => 'The same of one reading was put right in two ways';
export const ofBytes = (size: number, hash: string): string =>
  `${size} bytes, beginning of its hash ${hash.slice(0, 8)}`;
export const unset = (): string => 'not given';

export const comparedWith = (from: string, to: string): string => `From ${from} to ${to}`;
export const thisNotebook = (): string => 'this notebook';
export const comparedDays = (from: string, to: string): string => `From ${from} to ${to}`;
export const newlyHead = (count: number): string => `Newly raised: ${count}`;
export const clearedHead = (count: number): string => `No longer raised: ${count}`;
export const otherwiseHead = (count: number): string => `Raised for other reasons: ${count}`;
export const sameRaised = (count: number): string =>
  count === 0
    ? 'Neither raises a unit.'
    : `Both raise the same ${count} ${count === 1 ? 'unit' : 'units'} for the same reasons.`;
export const restSame = (count: number): string =>
  `In all, the later list holds ${count} ${count === 1 ? 'unit' : 'units'}.`;
export const wasIs = (before: string, after: string): string => `was ${before}; is ${after}`;
export const decidedHead = (): string => 'Decided otherwise';
export const nothingDecided = (): string => 'Nothing was decided otherwise.';
export const decidedLine = (line: string): string => `${capital(line.replace(/^as_of /, 'the day it looks from '))}.`;
export const notCalculated = (title: string): string =>
  `Which units ${title} raises is unknown: it could not be calculated with the data files at hand. Open it by itself to see what it misses.`;
