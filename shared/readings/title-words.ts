import { HEAD_QUALIFIERS } from './head-words.ts';
import { plainWords } from './plain-words.ts';

/** What stands beside a fire or a state in a title and says nothing; common practice, no source. */
const BESIDE =
  /\b(?:readings?|tests?|results?|data|values?|measurements?|conditions?|section|table|combustion|flue gas|stack gas|boiler|burner|checks?|analys[ie]s|report|at|on|the|of|messung(?:en)?|messwerte|werte|abgas|abgasmessung|abgasanalyse|verbrennung|verbrennungsanalyse|messprotokoll|protokoll|bei|am|vom|der|mesures?|releves?|analyse|fumees|rapport|de|des|du|la|le|lecturas?|mediciones|analisis|humos|informe|prueba|en|del|misure|letture|analisi|combustione|fumi|rapporto|prova|di|della|metingen|meting|rookgas|rookgasanalyse|verbranding|verbrandingsanalyse|van)\b/g;
/** What makes a date beside it that of a test, and not that of a printout. */
const TESTED =
  /\b(?:readings?|tests?|measurements?|checks?|analys[ie]s|messung(?:en)?|abgasmessung|abgasanalyse|mesures?|releves?|analyse|lecturas?|mediciones|analisis|prueba|misure|letture|analisi|prova|metingen|meting|rookgasanalyse)\b/;
const DATE =
  /\b(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}([./-])\d{1,2}\1(?:\d{4}|\d{2}))(?:(?:T|,?\s+)\d{1,2}:\d{2}(?::\d{2})?(?:\s*[ap]\.?m\b\.?)?)?(?![\d./-])/gi;

export interface Title {
  readonly fire: string;
  readonly state: string;
  /** As written; '' where the title has none. */
  readonly date: string;
  /** Whether the date stands there alone, which may be that of a printout. */
  readonly isBare: boolean;
}

const NOTHING: Title = { fire: '', state: '', date: '', isBare: false };

/** What a title such as "As-found readings" or "Flue gas test 12.03.2024, HIGH FIRE" says; nothing where any of it is not understood. */
export function readTitle(title: string): Title {
  const dates = title.match(DATE) ?? [];
  if (dates.length > 1) return NOTHING;
  const [date = ''] = dates;
  const words = plainWords(title.replace(date, ' '));
  let rest = ` ${words} `;
  const found = { fire: '', state: '' };
  for (const { words: said, kind, value } of HEAD_QUALIFIERS) {
    if (found[kind] !== '' || !rest.includes(` ${said} `)) continue;
    found[kind] = value;
    rest = rest.replace(` ${said} `, ' ');
  }
  if (rest.replace(BESIDE, ' ').trim() !== '') return NOTHING;
  const isTested = found.fire !== '' || found.state !== '' || TESTED.test(words);
  return { ...found, date: isTested || words === '' ? date : '', isBare: words === '' && date !== '' };
}
