/** What stands around proposals that the user accepts or leaves. */
export const initials = (): string => 'Your initials';
export const initialsNeeded = (): string => 'Each correction is signed, so that it can be asked about and lifted off.';
export const accept = (): string => 'Accept';
export const proposed = (words: string): string => `Proposed: ${words}.`;
export const showAll = (count: number): string => `Show all ${count}`;

const WHAT: Readonly<Record<string, string>> = {
  fires: 'Fires that no file names',
  states: 'States that no file names',
  fuels: 'Fuels that neither file nor register names',
  units: 'Units near a registered one',
};
export const kindHead = (kind: string): string => WHAT[kind] ?? kind;
export const kindWords = (kind: string, unit: string, readings: number, wouldBe: string): string =>
  kind === 'units'
    ? `${unit} would be ${wouldBe} (${readings} ${readings === 1 ? 'reading' : 'readings'})`
    : `${unit}: ${readings} ${readings === 1 ? 'reading' : 'readings'} would be ${onlyWord(wouldBe, readings)}`;
export const acceptAll = (count: number): string => `Accept all ${count}`;
export const eventsHead = (): string => 'Events that notes tell of; none counts until it is accepted';
export const eventWords = (unit: string, on: string, event: string): string =>
  `${unit}, ${on}: ${event.replaceAll('_', ' ')}`;
export const noteWords = (note: string): string => `The note says "${note}".`;

/** A word that all readings get needs no count of its own. */
const onlyWord = (wouldBe: string, readings: number): string =>
  wouldBe.endsWith(` ${readings}`) && !wouldBe.includes(',') ? wouldBe.slice(0, -` ${readings}`.length) : wouldBe;
