import { conversion } from '../quantities/convert.ts';
import { findUnit } from '../quantities/find-unit.ts';
import type { Field } from './fields.ts';
import { HEAD_QUALIFIERS } from './head-words.ts';
import { withoutDateForm } from './order-in-head.ts';
import { plainWords } from './plain-words.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Reason of a head that is one of the project's own names. */
export const OWN_NAME = 'one of the names that this notebook writes itself';

/** What a head says. `unit` is a UCUM code, '' where the head gives none. */
export interface HeadMeaning {
  readonly field: string;
  readonly unit: string;
  readonly fire: string;
  readonly state: string;
  readonly confidence: number;
  readonly reason: string;
}

/** Words that may stand around a name without changing what it means. */
const FILLERS = new Set(
  `value reading measured actual avg average mean sensor content test the of at in on for no nr level ua
   wert messwert gemessen gehalt istwert mittel der die das des
   valeur mesure moyenne de du la le les d l
   valor medida media del el los
   valore misura misurato dei della delle
   waarde meting gemeten gemiddeld van het`.split(/\s+/),
);

/**
 * What a head means in a vocabulary; undefined where it is not understood. A second head line that holds the units
 * may be given beside it.
 */
export function understandHead(head: string, vocabulary: Vocabulary, unitLine = ''): HeadMeaning | undefined {
  const own = ownMeaning(head.trim(), vocabulary);
  if (own) return { ...own, fire: '', state: '', confidence: 1, reason: OWN_NAME };
  for (const { name, unit } of readings(withoutDateForm(head), unitLine)) {
    const found = withoutQualifiers(plainWords(name), vocabulary);
    if (!found) continue;
    const field = vocabulary.fields.get(found.field);
    const counted =
      field?.kind === 'number' || found.field === 'co' || found.field === 'co_raw' || found.field === 'lambda';
    if (unit !== '' && (!counted || (field !== undefined && !isUnitOf(unit, field)))) continue;
    return { ...found, unit };
  }
  return undefined;
}

/** Names that this project gives to columns. "CO_ppm" in capitals is another's, and does not say raw. */
function ownMeaning(head: string, { own }: Vocabulary): ReturnType<Vocabulary['own']['get']> {
  const found = own.get(head.toLowerCase());
  return found?.field === 'co_ppm' && head !== 'co_ppm' ? undefined : found;
}

/** "(G)" after an efficiency is no gram. A field without a unit of its own (an air ratio, fuel) is looked at later. */
function isUnitOf(code: string, { unit, suffixes }: Field): boolean {
  if (unit === '' || unit === code || Object.values(suffixes ?? {}).includes(code)) return true;
  const [from, to] = [findUnit(code), findUnit(unit)];
  return from !== undefined && to !== undefined && conversion(from, to) !== undefined;
}

/** UCUM code of the unit that a head gives of a field, whatever its name is; '' where it gives none. */
export function unitInHead(head: string, field: Field): string {
  for (const { unit } of readings(head, '')) if (unit !== '' && isUnitOf(unit, field)) return unit;
  return '';
}

/** The ways to part a head into a name and a unit, most explicit first. */
function* readings(head: string, unitLine: string): Generator<{ name: string; unit: string }> {
  const below = unitCode(unitLine);
  if (below !== '') yield { name: head, unit: below };
  for (const match of head.matchAll(/[[(]\s*([^\])]*?)\s*[\])]/g)) {
    // "(in °F)" is in °F, "(in H2O)" in inches of water.
    const unit = unitCode(match[1]) || unitCode(match[1].replace(/^in\s+/i, ''));
    if (unit !== '') yield { name: head.replace(match[0], ' '), unit };
  }
  yield { name: head, unit: '' };
  const words = head.trim().split(/[\s_,;/]+/);
  for (let size = Math.min(3, words.length - 1); size > 0; size--) {
    const unit = unitCode(words.slice(-size).join(' '));
    if (unit !== '') yield { name: words.slice(0, -size).join(' '), unit };
  }
}

function unitCode(text: string): string {
  const trimmed = text.trim().replace(/^[[(]|[\])]$/g, '');
  return trimmed === '' ? '' : (findUnit(trimmed)?.code ?? '');
}

type Found = Omit<HeadMeaning, 'unit'>;

const knownField = (field: string | undefined, { fields }: Vocabulary): string | undefined =>
  field !== undefined && fields.has(field) ? field : undefined;

/** Gases written out, by what they are called for short. */
const GASES: readonly (readonly [RegExp, string])[] = [
  [
    /\b(?:carbon monoxide|kohlenmonoxid|monoxyde de carbone|monoxido de carbono|monossido di carbonio|koolmonoxide)\b/,
    'co',
  ],
  [
    /\b(?:carbon dioxide|kohlendioxid|dioxyde de carbone|dioxido de carbono|anidride carbonica|kool(?:stof)?dioxide)\b/,
    'co2',
  ],
  [/\b(?:oxygen|sauerstoff|oxygene|oxigeno|ossigeno|zuurstof)\b/, 'o2'],
];

const short = (words: string): string => GASES.reduce((text, [name, gas]) => text.replace(name, gas), words);

/** What stands around the word that tells a pressure of the gas supply, in any order. */
const OF_SUPPLY = new Set('gas supply inlet line main meter pressure press natural ng'.split(' '));
const SUPPLY: Readonly<Record<string, string>> = {
  static: 'supply_static',
  standing: 'supply_static',
  lockup: 'supply_static',
  'lock up': 'supply_static',
  'no flow': 'supply_static',
  dynamic: 'supply_running',
  dyn: 'supply_running',
  running: 'supply_running',
  working: 'supply_running',
  'with flow': 'supply_running',
};

/** "Inlet gas pressure, static": the words of a supply pressure in another order than any list has them. */
function supplyPressure(words: string): string | undefined {
  const all = words.split(' ');
  const rest = all.filter((word) => !OF_SUPPLY.has(word));
  return rest.length < all.length ? SUPPLY[rest.join(' ')] : undefined;
}

/** Looks the words up as they are, then with words for fire and state taken out, then with fillers taken out. */
function withoutQualifiers(written: string, vocabulary: Vocabulary): Found | undefined {
  const words = short(written);
  const exact = vocabulary.heads.get(written) ?? vocabulary.heads.get(words);
  if (exact !== undefined)
    return { field: exact, fire: '', state: '', confidence: 0.95, reason: `"${words}" is a usual name` };
  let rest = ` ${words} `;
  const taken = { fire: '', state: '' };
  for (const { words: qualifier, kind, value } of HEAD_QUALIFIERS) {
    if (taken[kind] !== '' || !rest.includes(` ${qualifier} `)) continue;
    const without = rest.replace(` ${qualifier} `, ' ');
    // "TL vorher": what is left alone is the name, here of an air temperature, and no fire.
    if (without.trim() === '') continue;
    taken[kind] = value;
    rest = without;
  }
  const field = vocabulary.heads.get(rest.trim().replace(/\s+/g, ' '));
  if (field !== undefined && (taken.fire !== '' || taken.state !== ''))
    return {
      field,
      ...taken,
      confidence: 0.9,
      reason: `"${rest.trim()}" with ${[taken.fire, taken.state].filter(Boolean).join(', ')}`,
    };
  const bare = rest
    .trim()
    .split(/\s+/)
    .filter((word) => !FILLERS.has(word))
    .join(' ');
  const loose = vocabulary.heads.get(bare) ?? knownField(supplyPressure(bare), vocabulary);
  if (loose === undefined || bare === '') return undefined;
  return { field: loose, ...taken, confidence: 0.75, reason: `"${bare}" within "${words}"` };
}
