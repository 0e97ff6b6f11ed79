/** A space, but not one between a number and its unit or behind `"O2",`. */
const BREAK = /(?<!\d|",) |(?<=\d) (?=[^%°µ\p{L}])/u;

/**
 * A line in lines of at most `width` characters, broken at spaces; what follows the first is indented by `indent`. A number
 * stays with its unit, and a gas with the temperature that it is asked about. A word that is longer than a line is left whole.
 */
export function foldLine(text: string, width: number, indent: number): string[] {
  const lead = /^ */.exec(text)?.[0] ?? '';
  const words = text.slice(lead.length).split(BREAK);
  const lines: string[] = [];
  let line = lead + words[0];
  for (const word of words.slice(1)) {
    if ([...line].length + 1 + [...word].length <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = ' '.repeat(indent) + word;
    }
  }
  return [...lines, line];
}
