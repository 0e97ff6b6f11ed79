import { dateField, textField } from './fields.ts';
import { plainWords } from './plain-words.ts';
import { type Vocabulary, vocabularyOf } from './vocabulary.ts';

/** Everything that can happen to a unit, with further words for it. */
const EVENTS: Readonly<Record<string, string>> = {
  replaced:
    'replacement|new unit|new boiler|boiler replaced|ausgetauscht|ersetzt|remplace|sustituido|sostituito|vervangen',
  converted: 'conversion|fuel conversion|umgestellt|converti|convertido|convertito|omgebouwd',
  gas_valve: 'gas valve|gas valve replaced|valve|gasventil|gasarmatur|vanne gaz|valvula de gas|valvola gas|gasklep',
  regulator:
    'gas regulator|pressure regulator|regulator replaced|druckregler|gasdruckregler|detendeur|regulador|regolatore|drukregelaar',
  burner_parts:
    'burner parts|burner repair|burner part|brennerteile|pieces bruleur|piezas quemador|parti bruciatore|branderonderdelen',
  cleaned: 'cleaning|brushed|gereinigt|reinigung|nettoye|nettoyage|limpiado|limpieza|pulito|pulizia|gereinigd',
  sensor_renewed: 'sensor renewed|sensor replaced|sensor|fuhler|sonde|sonda',
  targets_changed: 'targets changed|new targets|sollwerte geandert',
  laid_up: 'laid up|mothballed|stillgelegt|hors service|fuera de servicio|fuori servizio|buiten gebruik',
  recommissioned: 'recommissioning|back in service|wieder in betrieb|remis en service',
  retired: 'removed|decommissioned|demontiert|retire|retirado|dismesso|verwijderd',
  shut_down: 'shut down|red tagged|red tag|locked out|gesperrt|abgeschaltet|arrete|parado|spento|uitgeschakeld',
  no_load: 'no load|keine last|kein bedarf|pas de charge|sin carga|senza carico|geen belasting',
  visit_without_readings:
    'visit without readings|no readings|no reading|ohne messung|sans mesure|sin medicion|senza misura|zonder meting',
};

export const EVENT_NAMES: readonly string[] = Object.keys(EVENTS);

/** Plain word -> event. */
export const EVENT_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries(EVENTS).flatMap(([event, list]) =>
    [event, ...list.split('|')].map((word) => [plainWords(word), event] as const),
  ),
);

const HEADS: Readonly<Record<string, string>> = {
  unit: 'unit id|boiler|boiler id|equipment|asset|anlage|kessel|chaudiere|caldera|caldaia|ketel',
  on: 'date|day|happened on|datum|date evenement|fecha|data',
  event: 'what|kind|type|event type|ereignis|evenement|evento|gebeurtenis',
  note: 'notes|comment|remark|bemerkung|remarque|observaciones|osservazioni|opmerking',
};

export const EVENT_VOCABULARY: Vocabulary = vocabularyOf(
  'events',
  [textField('unit'), dateField('on'), textField('event'), textField('note')],
  new Map(
    Object.entries(HEADS).flatMap(([field, list]) => list.split('|').map((head) => [plainWords(head), field] as const)),
  ),
);
