import type { FileRole } from '../page-session.ts';

/** Heads that only one kind of file has, most telling first. A proposal: the user sees it and can change it. */
const TELLING: readonly (readonly [FileRole, RegExp])[] = [
  ['notebook', /^\s*\{[\s\S]*"format"\s*:\s*"between-visits-notebook"/],
  ['events', /(^|[,;\t|])\s*"?event"?\s*($|[,;\t|])/im],
  ['fuel-use', /(^|[,;\t|])\s*"?(energy|quantity|cost|fuel[_ ]use)\w*"?\s*($|[,;\t|])/im],
  [
    'register',
    /(heat_input_high|_target_pct|_tolerance_pct|annual_fuel|fuel_air_control|supply_drop_limit|installed_on)/i,
  ],
  ['readings', /(taken_at|o2|co2|o₂|sauerstoff|oxygen|flue|abgas|stack|as_found|as found)/i],
];

/** What a file most likely holds, from its name and its first few lines; undefined where nothing tells. */
export function guessRole(path: string, beginning: string): FileRole | undefined {
  const found = TELLING.find(([, heads]) => heads.test(beginning));
  if (found) return found[0];
  const name = path.split('/').at(-1) ?? path;
  if (/register|units|inventory/i.test(name)) return 'register';
  if (/event/i.test(name)) return 'events';
  if (/fuel|meter|bill/i.test(name)) return 'fuel-use';
  return /reading|measure|analy[sz]er|export|messung/i.test(name) ? 'readings' : undefined;
}
