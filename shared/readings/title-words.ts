import { HEAD_QUALIFIERS } from './head-words.ts';
import { plainWords } from './plain-words.ts';
import { TITLE_VALUES } from './value-words.ts';

const QUALIFIERS = [...HEAD_QUALIFIERS, ...TITLE_VALUES].sort((a, b) => b.words.length - a.words.length);

/** What stands beside a fire or a state in a title and says nothing; common practice, no source. */
const BESIDE =
  /\b(?:readings?|tests?|results?|data|values?|measurements?|conditions?|section|table|combustion|flue gas|stack gas|boiler|burner|checks?|analys[ie]s|report|at|on|the|of|messung(?:en)?|messwerte|werte|abgas|kessel|brenner|abgasmessung|abgasanalyse|verbrennung|verbrennungsanalyse|messprotokoll|protokoll|bei|am|vom|der|mesures?|releves?|analyse|fumees|chaudiere|bruleur|rapport|de|des|du|la|le|lecturas?|mediciones|analisis|humos|caldera|quemador|informe|prueba|en|del|misure|letture|analisi|combustione|fumi|caldaia|bruciatore|rapporto|prova|di|della|metingen|meting|rookgas|rookgasmeting|ketel|brander|rookgasanalyse|verbranding|verbrandingsanalyse|van)\b/g;
/** What makes a date beside it that of a test, and not that of a printout. */
const TESTED =
  /\b(?:readings?|tests?|measurements?|checks?|analys[ie]s|messung(?:en)?|abgasmessung|abgasanalyse|mesures?|releves?|analyse|lecturas?|mediciones|analisis|prueba|misure|letture|analisi|prova|metingen|meting|rookgasanalyse)\b/;
const DATE =
  /\b(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}([./-])\d{1,2}\1(?:\d{4}|\d{2}))(?:(?:T|,?\s+)\d{1,2}:\d{2}(?::\d{2})?(?:\s*[ap]\.?m\b\.?)?)?(?![\d./-])/gi;

/** A unit by its kind and an id with a digit: "Boiler B-07", "Kessel Nr. 3". */
const UNIT =
  /(?<!\p{L})(?:boiler|unit|heater|kessel|heizkessel|chaudi[eè]re|caldera|caldaia|ketel)\s+(?:(?:no|nr|n°|num)\.?\s*|#\s*)?((?=[\p{L}_/-]*\d)[\p{L}\p{N}][\p{L}\p{N}_/-]*)(?![\p{L}\p{N}.:])/iu;

export interface Title {
  readonly unit: string;
  readonly fire: string;
  readonly state: string;
  /** As written; '' where the title has none. */
  readonly date: string;
  /** Whether the date stands there alone, which may be that of a printout. */
  readonly isBare: boolean;
}

const NOTHING: Title = { unit: '', fire: '', state: '', date: '', isBare: false };

/** What a title such as "As-found readings" or "Flue gas test 12.03.2024, HIGH FIRE" says; nothing where any of it is not understood. */
export function readTitle(title: string): Title {
  const dates = title.match(DATE) ?? [];
  if (dates.length > 1) return NOTHING;
  const [date = ''] = dates;
  const undated = title.replace(date, ' ');
  const [named = '', unit = ''] = UNIT.exec(undated) ?? [];
  const words = plainWords(undated.replace(named, ' '));
  let rest = ` ${words} `;
  const found = { fire: '', state: '' };
  for (const { words: said, kind, value } of QUALIFIERS) {
    if (found[kind] !== '' || !rest.includes(` ${said} `)) continue;
    found[kind] = value;
    rest = rest.replace(` ${said} `, ' ');
  }
  if (rest.replace(BESIDE, ' ').trim() !== '') return NOTHING;
  const isTested = found.fire !== '' || found.state !== '' || TESTED.test(words);
  const isBare = words === '' && unit === '' && date !== '';
  return { unit, ...found, date: isTested || unit !== '' || isBare ? date : '', isBare };
}
