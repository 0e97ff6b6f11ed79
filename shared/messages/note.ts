/** Sentences of the note cell. */
export const badNote = (found: string): string => `note: a note holds text, it is ${found}; give it as text.`;
export const emptyNote = (): string => 'Nothing noted yet.';
export const writeHere = (): string => 'write here';
