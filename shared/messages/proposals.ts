/** What stands around proposals that the user accepts or leaves. */
export const initials = (): string => 'Your initials';
export const initialsNeeded = (): string => 'Each correction is signed, so that it can be asked about and lifted off.';
export const accept = (): string => 'Accept';
export const proposed = (words: string): string => `Proposed: ${words}.`;
export const showAll = (count: number): string => `Show all ${count}`;
