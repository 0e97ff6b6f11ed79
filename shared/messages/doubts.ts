/** What a flag of a derived reading says against it, in words; '' for a flag that is a remark, no doubt. */
const DOUBTS: Readonly<Record<string, string>> = {};

export const doubtWords = (flag: string): string => DOUBTS[flag] ?? '';
