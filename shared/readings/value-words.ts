import { plainWords } from './plain-words.ts';

/**
 * Words that exports use for the values of a column, in English, German, French, Spanish, Italian and Dutch.
 * Compared by `plainWords`; common practice of these languages, no source.
 */
type Words = Readonly<Record<string, string>>;

const FIRES: Words = {
  high: `high|high fire|hi|hf|hi fire|full|full fire|full load|full rate|max|maximum|max fire|100 %|100|large|stage 2|2nd stage|second stage|h|
    volllast|vl|gl|vollast|grosslast|gross|hochlast|hoch|stufe 2|2 stufe|maximallast|nennlast|
    pleine charge|pleine puissance|gf|grand feu|grande allure|charge max|charge nominale|allure max|puissance max|maximale|grande|fort|plein feu|2eme allure|
    plena carga|carga maxima|fuego alto|llama alta|alta|alto|alto fuego|carga alta|potencia maxima|maxima|maximo|
    pieno carico|carico massimo|alta fiamma|potenza massima|massima|massimo|alto carico|fiamma alta|
    vollast|volle last|hoog|hooglast|hoogvuur|maximaal|hoge stand`,
  low: `low|low fire|lo|lf|lo fire|min|minimum|min fire|part load|partial load|small|stage 1|1st stage|first stage|l|
    teillast|tl|kl|kleinlast|schwachlast|niedriglast|niedrig|klein|stufe 1|1 stufe|minimallast|grundlast|
    charge partielle|pf|petit feu|petite allure|charge min|charge minimale|allure min|puissance min|minimale|petite|faible|faible charge|1ere allure|
    carga parcial|carga minima|fuego bajo|llama baja|baja|bajo|bajo fuego|carga baja|potencia minima|
    carico parziale|carico minimo|bassa fiamma|potenza minima|minima|minimo|basso carico|fiamma bassa|
    deellast|kleine last|laag|laaglast|laagvuur|minimaal|lage stand`,
  mid: `mid|middle|medium|mid fire|intermediate|m|mittel|mittellast|zwischenlast|moyen|charge moyenne|allure intermediaire|
    medio|media|carga media|fuego medio|carico medio|fiamma media|intermedio|midden|middellast|tussenlast`,
  single: `single|single stage|one stage|on off|on|only|single fire|einstufig|ein|une allure|tout ou rien|monoallure|
    una etapa|todo nada|monostadio|un etapa|unico|eentraps|aan uit`,
  unnamed: 'unnamed|other|unknown|-|?|',
};

const STATES: Words = {
  as_found: `as found|found|asfound|af|a f|fnd|before|pre|initial|arrival|arrivee|llegada|arrivo|aankomst|ankunft|on arrival|pre adjustment|before adjustment|pre tune|before tuning|incoming|
    vorher|vor|vor einstellung|vorgefunden|eingangsmessung|anfang|istzustand|vor wartung|vorgefundener zustand|
    avant|avant reglage|tel que trouve|trouve|initiale|etat initial|a l arrivee|avant intervention|
    antes|antes de ajuste|antes del ajuste|encontrado|como se encontro|al llegar|inicial|
    prima|prima della regolazione|prima regolazione|trovato|come trovato|all arrivo|iniziale|
    voor|voor afstelling|aangetroffen|vooraf|bij aankomst|begin`,
  as_left: `as left|left|asleft|al|a l|lft|after|post|final|departure|depart|salida|partenza|vertrek|post adjustment|after adjustment|post tune|after tuning|outgoing|
    nachher|nach|nach einstellung|hinterlassen|ausgangsmessung|ende|endmessung|nach wartung|verlassen|
    apres|apres reglage|laisse|tel que laisse|finale|etat final|au depart|apres intervention|
    despues|despues de ajuste|despues del ajuste|dejado|como se dejo|al salir|
    dopo|dopo la regolazione|dopo regolazione|lasciato|come lasciato|alla partenza|
    na|na afstelling|achtergelaten|achteraf|bij vertrek|eind`,
  trial:
    'trial|test|intermediate|between|during|attempt|probe|versuch|zwischenmessung|essai|pendant|intermediaire|prueba|ensayo|durante|intermedio|prova|intermedia|proef|tussen|tussenmeting',
  unknown: 'unknown|unbekannt|inconnu|desconocido|sconosciuto|onbekend|-|?|',
};

/** Of a test that prints several: only its mean is a reading. */
const STATISTICS: Words = {
  mean: 'mean|average|avg|mittel|mittelwert|moyenne|media|gemiddelde|value|reading|final|current|steady',
};

const YES_NO: Words = {
  yes: 'yes|y|true|1|x|ja|j|oui|o|si|s|sim|adjusted|eingestellt|regle|ajustado|regolato|afgesteld|done',
  no: 'no|n|false|0|nein|non|nee|not adjusted|left as found|nicht eingestellt|non regle|sin ajuste|non regolato|niet afgesteld',
};

const CO2_FROM: Words = {
  measured: 'measured|m|sensor|ndir|infrared|gemessen|mesure|medido|misurato|gemeten',
  calculated: 'calculated|c|calc|computed|derived|berechnet|rechnerisch|calcule|calculado|calcolato|berekend',
};

const REASONS: Words = {
  scheduled:
    'scheduled|planned|routine|annual|maintenance|wartung|planmassig|entretien|programmee|programado|mantenimiento|programmata|manutenzione|gepland|onderhoud',
  callback: 'callback|call back|return|reklamation|rappel|rellamada|richiamo|terugroep',
  repair:
    'repair|breakdown|fault|reparatur|storung|depannage|reparation|averia|reparacion|guasto|riparazione|storing|reparatie',
  seasonal: 'seasonal|season|saison|saisonal|saisonnier|estacional|stagionale|seizoen',
  commissioning:
    'commissioning|startup|start up|inbetriebnahme|mise en service|puesta en marcha|messa in servizio|inbedrijfstelling',
};

const FUELS: Words = {
  natural_gas: `natural gas|nat gas|ng|gas|natgas|mains gas|erdgas|erdgas h|erdgas e|gaz naturel|gaz nat|gas natural|gas naturale|metano di rete|aardgas`,
  methane: 'methane|methan|metano|methaan|ch4',
  propane: 'propane|propan|propano|propaan|c3h8',
  butane: 'butane|butan|butano|butaan|c4h10',
  lpg: 'lpg|lp|lp gas|flussiggas|gpl|glp|liquefied petroleum gas|vloeibaar gas',
  no2_oil: `no2 oil|2|no 2 fuel oil|2 fuel oil|no 2 oil|no 2|number 2 oil|2 oil|light oil|fuel oil|gas oil|heating oil|diesel|oil|heizol|heizol el|ol|fioul|fuel domestique|fod|gasoleo|gasoil|gasolio|huisbrandolie|stookolie`,
  no6_oil:
    'no6 oil|6|no 6 fuel oil|6 fuel oil|no 6 oil|no 6|heavy oil|heavy fuel oil|schwerol|fioul lourd|fueloil pesado|olio combustibile denso|zware stookolie',
  hydrogen: 'hydrogen|h2|wasserstoff|hydrogene|hidrogeno|idrogeno|waterstof',
};

const SERVICES: Words = {
  heating: 'heating|space heating|hydronic|heizung|chauffage|calefaccion|riscaldamento|verwarming',
  hot_water:
    'hot water|dhw|domestic hot water|water heater|warmwasser|trinkwarmwasser|brauchwasser|eau chaude|ecs|eau chaude sanitaire|agua caliente|acs|acqua calda|acqua calda sanitaria|warm water|tapwater',
  steam: 'steam|dampf|vapeur|vapor|vapore|stoom',
  process: 'process|prozess|procede|proceso|processo|proces',
};
const BURNERS: Words = {
  premix:
    'premix|premixed|premix condensing|vormischbrenner|vormisch|premelange|premezcla|premiscelato|voormeng|voormengbrander',
  power:
    'power|power burner|forced draft|forced draught|blower|geblase|geblasebrenner|air souffle|bruleur a air souffle|aire forzado|aria soffiata|ventilatorbrander',
  atmospheric: 'atmospheric|natural draft|natural draught|atmospharisch|atmospherique|atmosferico|atmosferisch',
};
const FIRINGS: Words = {
  single:
    'single|single stage|one stage|on off|einstufig|une allure|tout ou rien|una etapa|monostadio|eentraps|aan uit',
  two_stage: 'two stage|2 stage|two stages|high low|hi lo|zweistufig|deux allures|dos etapas|bistadio|tweetraps',
  modulating: 'modulating|mod|full modulation|modulierend|modulant|modulante|modulerend',
};
const CONTROLS: Words = {
  linkage:
    'linkage|single point|jackshaft|mechanical|verbund mechanisch|gestange|tringlerie|mecanique|varillaje|leveraggio|stangen',
  parallel:
    'parallel|parallel positioning|electronic|linkageless|elektronisch|verbund elektronisch|electronique|electronico|elettronico',
  pneumatic: 'pneumatic|ratio regulator|pneumatisch|pneumatique|neumatico|pneumatico',
  fixed: 'fixed|none|fest|fixe|fijo|fisso|vast',
};
const AIR_SOURCES: Words = {
  room: 'room|indoor|boiler room|mechanical room|raumluft|raum|local|ambiente|sala|locale|ruimte',
  outside: 'outside|outdoor|ducted|direct vent|sealed|aussen|aussenluft|exterieur|exterior|esterno|buiten',
};

const mapOf = (words: Words): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(words).flatMap(([value, list]) =>
      [value, ...list.split('|')].map((word) => [plainWords(word), value] as const).filter(([word]) => word !== ''),
    ),
  );

export type WordColumn =
  | 'fire'
  | 'state'
  | 'statistic'
  | 'yes_no'
  | 'co2_from'
  | 'visit_reason'
  | 'fuel'
  | 'service'
  | 'burner'
  | 'firing'
  | 'fuel_air_control'
  | 'air_source';

/** Plain word -> canonical value, by the column the words stand in. */
export const VALUE_WORDS: Readonly<Record<WordColumn, ReadonlyMap<string, string>>> = {
  fire: mapOf(FIRES),
  state: mapOf(STATES),
  statistic: mapOf(STATISTICS),
  yes_no: mapOf(YES_NO),
  co2_from: mapOf(CO2_FROM),
  visit_reason: mapOf(REASONS),
  fuel: mapOf(FUELS),
  service: mapOf(SERVICES),
  burner: mapOf(BURNERS),
  firing: mapOf(FIRINGS),
  fuel_air_control: mapOf(CONTROLS),
  air_source: mapOf(AIR_SOURCES),
};

/** Words of this length say even in a title what they mean; those of two lists do not. */
const LEAST_IN_TITLES = 8;
const OF_TITLES = Object.entries({ ...FIRES, ...STATES }).flatMap(([value, list]) =>
  list
    .split('|')
    .map(plainWords)
    .filter((words) => words.length >= LEAST_IN_TITLES)
    .map((words) => ({ words, kind: value in FIRES ? ('fire' as const) : ('state' as const), value })),
);

/** Words for fire and state that a title may have, beside those of heads. */
export const TITLE_VALUES = OF_TITLES.filter(
  ({ words, value }) => !OF_TITLES.some((other) => other.words === words && other.value !== value),
);
