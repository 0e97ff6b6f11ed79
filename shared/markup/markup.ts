import { escapeText } from './escape-text.ts';

/** Text that is markup already. Only `markup` and `trusted` make it, so that everything else is escaped. */
export class Markup {
  constructor(readonly text: string) {}
}

type Part = string | number | Markup | readonly Part[];

/** A template whose values are escaped, unless they are markup themselves; lists are joined. */
export function markup(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  let text = strings[0];
  parts.forEach((part, i) => {
    text += textOf(part) + strings[i + 1];
  });
  return new Markup(text);
}

/** Markup that this project wrote itself, such as a drawing; never anything out of a file. */
export const trusted = (text: string): Markup => new Markup(text);

function textOf(part: Part): string {
  if (part instanceof Markup) return part.text;
  if (typeof part === 'string' || typeof part === 'number') return escapeText(String(part));
  return part.map(textOf).join('');
}
