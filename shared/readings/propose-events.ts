import { plainWords } from './plain-words.ts';

/** Words in a note that tell of an event; English, German, French, Spanish, Italian, Dutch. Common practice, no source. */
const TOLD: readonly (readonly [event: string, words: RegExp])[] = [
  [
    'gas_valve',
    /\b(?:(?:replaced|changed|new|renewed) (?:the )?(?:gas )?valve|gas valve (?:replaced|changed|renewed)|gas(?:ventil|armatur) (?:getauscht|ersetzt|erneuert)|vanne (?:gaz )?remplacee|valvula (?:de gas )?(?:cambiada|sustituida)|valvola (?:gas )?sostituita|gasklep vervangen|neues gasventil|neue gasarmatur|remplace (?:la )?vanne|changement vanne|(?:cambio|sustitucion) (?:de )?valvula|sostituita valvola|nieuwe gasklep)\b/,
  ],
  [
    'regulator',
    /\b(?:(?:replaced|changed|new) (?:the )?(?:gas |pressure )?regulator|regulator (?:replaced|changed|renewed)|druckregler (?:getauscht|ersetzt|erneuert)|detendeur remplace|regulador (?:cambiado|sustituido)|regolatore sostituito|drukregelaar vervangen)\b/,
  ],
  [
    'burner_parts',
    /\b(?:(?:replaced|changed|new) (?:the )?(?:burner(?: head| tube| nozzle)?|nozzle|burner gasket|electrodes?|blower|fan wheel)|brenner(?:kopf|duse)? (?:getauscht|ersetzt)|duse (?:getauscht|ersetzt|erneuert)|gicleur remplace|ugello sostituito|sproeier vervangen)\b/,
  ],
  [
    'replaced',
    /\b(?:(?:boiler|unit|heater) (?:was )?replaced|new (?:boiler|unit|heater)|kessel (?:getauscht|ersetzt|erneuert)|chaudiere remplacee|caldera (?:cambiada|sustituida)|caldaia sostituita|ketel vervangen)\b/,
  ],
  [
    'converted',
    /\b(?:converted to|fuel conversion|umgestellt auf|convertie? au|convertida? a|convertita a|omgebouwd naar)\b/,
  ],
  [
    'sensor_renewed',
    /\b(?:(?:new|replaced|changed) (?:the )?(?:o2 |oxygen )?(?:sensor|cell)|(?:sensor|cell) (?:replaced|renewed|changed)|sensor (?:getauscht|ersetzt|erneuert)|cellule remplacee)\b/,
  ],
  [
    'cleaned',
    /\b(?:cleaned (?:the )?(?:heat exchanger|boiler|burner|fireside|hx)|(?:heat exchanger|fireside|hx|tubes|boiler|burner) (?:cleaned|brushed)|brenner gereinigt|bruleur nettoye|nettoyage (?:bruleur|echangeur|chaudiere)|limpieza (?:de )?(?:quemador|caldera|intercambiador)|bruciatore pulito|pulizia (?:bruciatore|scambiatore|caldaia)|(?:brander|ketel) gereinigd|warmetauscher gereinigt|kessel gereinigt|echangeur nettoye|intercambiador limpiado|scambiatore pulito|wisselaar gereinigd)\b/,
  ],
  [
    'shut_down',
    /\b(?:red tag(?:ged)?|shut ?down|locked out|tagged out|left off|gesperrt|ausser betrieb|mise? hors service|fuera de servicio|fuori servizio|buiten bedrijf)\b/,
  ],
  [
    'no_load',
    /\b(?:no load|no high fire|could not reach high fire|keine last|pas de charge|sin carga|senza carico|geen belasting)\b/,
  ],
];

/** The event that a note tells of; '' where it tells of none. A proposal: the user accepts it or not. */
export function proposedEvent(note: string): string {
  const words = plainWords(note);
  return TOLD.find(([, pattern]) => pattern.test(words))?.[0] ?? '';
}
