import * as say from '../../shared/messages/notebook.ts';

const MEGABYTE = 1_000_000;
/** A parameter is typed or pasted by a person; a megabyte is a long book. */
const LIMIT = 1 * MEGABYTE;

/** One sentence where a parameter holds a text that would choke page and report; '' where all is well. */
export function tooHeavy(cell: string, value: unknown): string {
  const longest = longestText(value);
  return longest > LIMIT ? say.tooLarge(cell, Math.round((longest / MEGABYTE) * 10) / 10, LIMIT / MEGABYTE) : '';
}

function longestText(value: unknown): number {
  if (typeof value === 'string') return value.length;
  if (typeof value !== 'object' || value === null) return 0;
  let longest = 0;
  for (const item of Object.values(value)) longest = Math.max(longest, longestText(item));
  return longest;
}
