import { HEAD_QUALIFIERS } from './head-words.ts';
import { plainWords } from './plain-words.ts';

/** What stands beside a fire or a state in the title of a table and says nothing; common practice, no source. */
const BESIDE =
  /\b(?:readings?|tests?|results?|data|values?|measurements?|conditions?|section|table|messung(?:en)?|messwerte|werte|mesures?|releves?|lecturas?|mediciones|misure|letture|metingen)\b/g;

/** The fire and the state that a title such as "As-found readings" or "HIGH FIRE" names; '' for what it does not. */
export function titleWords(title: string): { readonly fire: string; readonly state: string } {
  let rest = ` ${plainWords(title).replace(BESIDE, ' ').replace(/\s+/g, ' ').trim()} `;
  const found = { fire: '', state: '' };
  for (const { words, kind, value } of HEAD_QUALIFIERS) {
    if (found[kind] !== '' || !rest.includes(` ${words} `)) continue;
    found[kind] = value;
    rest = rest.replace(` ${words} `, ' ');
  }
  return rest.trim() === '' ? found : { fire: '', state: '' };
}
