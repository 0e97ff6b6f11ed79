/** What the page says where readings are put right by hand. Named functions of strings and numbers. */
const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;

export const chooseReading = (): string => 'To put a reading right or set it aside, click one of its values.';
export const chosenReading = (reading: string, file: string, line: number): string =>
  `${reading}; ${file}, line ${line}`;
export const correctIt = (): string => 'Correct this reading …';
export const slipHead = (): string => 'Correction slip';
export const slipOf = (reading: string): string => `Correction slip for ${reading}`;
export const whatIsWrong = (): string => 'What is to be done';

export const doSetAside = (): string => 'Set this reading aside';
export const doChange = (): string => 'Put one value right';
export const doFire = (): string => 'Name its fire';
export const doState = (): string => 'Name its state';
export const doMerge = (unit: string): string => `${unit} is another spelling of one unit`;
export const doSwap = (): string => 'Two units were mixed up at this visit';

export const whichValue = (): string => 'Value';
export const isNow = (shown: string): string => (shown === '' ? 'now unknown' : `now ${shown}`);
export const shallBe = (unit: string): string => (unit === '' ? 'should be' : `should be, in ${unit}`);
export const emptyIsUnknown = (): string => 'Left empty, it is unknown.';
export const fireShallBe = (): string => 'The fire is';
export const stateShallBe = (): string => 'It was read';
export const belongsToUnit = (unit: string): string => `All readings of ${unit} belong to`;
export const mixedUpWith = (unit: string, day: string): string => `On ${day}, ${unit} was mixed up with`;

export const reasonWord = (): string => 'Reason';
export const initialsWord = (): string => 'Your initials';
export const dateWord = (): string => 'Date';
export const makeIt = (): string => 'Make the correction';
export const leaveIt = (): string => 'Leave it as it is';
export const underWay = (): string => 'Calculating what follows …';
export const made = (what: string): string => `${capital(what)}. Undo takes it back.`;

export const noValue = (column: string, found: string): string =>
  `"${found}" is no value for ${column}. Type a number with a point for decimals, or the word that the column holds.`;
export const sameValue = (column: string): string => `${column} is that already. Type what it should be.`;
export const noUnit = (): string => 'Name the other unit.';
export const sameUnit = (unit: string): string => `That is ${unit} itself. Name the other unit.`;
export const noReason = (): string => 'Give the reason: in a year, nobody remembers it.';
export const noInitials = (): string => 'Sign with your initials.';
export const noDay = (found: string): string => `"${found}" is no date. Write it as year, month, day: 2026-11-15.`;

// The list of corrections.
export const listHead = (): string => 'Every correction, each reversible';
export const listOfUnit = (unit: string): string => `Corrections of ${unit}`;
export const noneYet = (): string =>
  'No correction yet. Click a value of a reading, here or under a raised unit, to make one.';
export const because = (reason: string, initials: string, day: string): string => `${reason} — ${initials}, ${day}`;
export const importedAs = (before: string): string =>
  before === '' ? 'imported without a value' : `imported as ${before}`;
export const inEffect = (rows: number): string => (rows === 1 ? 'in effect: 1 reading' : `in effect: ${rows} readings`);
export const isOverruled = (): string => 'a later correction of the same counts instead';
export const isLifted = (): string => 'lifted off: without effect';
export const isLost = (): string => 'no longer finds its reading';
export const isUnderWay = (): string => 'being laid on';
export const lift = (): string => 'Lift it off';
export const liftNamed = (what: string): string => `Lift it off: ${what}`;
export const layOn = (): string => 'Lay it back on';
export const layOnNamed = (what: string): string => `Lay it back on: ${what}`;
export const restore = (): string => 'Restore with a reason …';
export const restoreNamed = (what: string): string => `Restore with a reason …: ${what}`;
export const doRestore = (): string => 'Restore this reading';
export const moreCorrections = (count: number): string => `Show all ${count} corrections`;
