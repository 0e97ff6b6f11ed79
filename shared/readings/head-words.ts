import { plainWords } from './plain-words.ts';

/**
 * Heads that exports give to a field, in English, German, French, Spanish, Italian and Dutch. Compared by `plainWords`,
 * after the unit and the words for fire and state have been taken out. Common practice of these languages, no source.
 */
const HEADS: Readonly<Record<string, string>> = {
  unit: `unit|unit id|unit no|unit number|boiler|boiler id|boiler no|boiler number|appliance|appliance id|equipment|equipment id|asset|asset id|asset tag|tag|heater|
    anlage|anlagennr|anlagennummer|anlage nr|kessel|kesselnr|kesselnummer|kessel nr|gerat|geratenr|heizkessel|einheit|
    chaudiere|installation|impianto|n impianto|codice impianto|instalacion|chaudiere no|no chaudiere|n chaudiere|numero chaudiere|appareil|equipement|generateur|
    caldera|n caldera|no caldera|numero caldera|equipo|generador|unidad|
    caldaia|n caldaia|numero caldaia|apparecchio|generatore|unita|
    ketel|ketelnr|ketel nr|ketelnummer|toestel|toestelnr|eenheid|installatie|boiler tag|boiler name|unit tag|equipment tag|asset name|blr|blr no|boiler ref|plant|plant item|plant ref|n generatore`,
  taken_at: `taken at|taken on|date|date time|datetime|timestamp|date and time|test date|reading date|measured on|measured at|date of test|when|tested|tested on|date tested|
    datum|messung am|prufdatum|datum messung|datum uhrzeit|gemessen am|zeitstempel|messdatum|messzeitpunkt|datum zeit|datum und uhrzeit|
    date heure|date mesure|date de mesure|date et heure|horodatage|date essai|
    fecha|fecha hora|fecha y hora|fecha de medida|fecha medicion|
    data|data ora|data e ora|data misura|data prova|
    datum tijd|datum en tijd|gemeten op|meetdatum|tijdstip|start|started|start time|started at|test start|begin|beginn|debut|inicio|inizio`,
  time_of_day:
    'time|time of day|clock|clock time|test time|uhrzeit|zeit|messzeit|heure|heure mesure|hora|ora|ora misura|tijd|meettijd',
  fire: `fire|fire point|fire rate|firing|firing point|load|load point|rate|stage|burner load|firing position|fire position|
    last|laststufe|lastpunkt|stufe|brennerstufe|brennerlast|leistungsstufe|
    allure|charge|regime|puissance|point de charge|
    carga|llama|fuego|etapa|regimen|punto de carga|
    carico|fiamma|stadio|regime bruciatore|punto di carico|
    belasting|stand|vlam|trap|branderstand|lastpunkt`,
  state: `state|condition|as found as left|found left|before after|test type|reading type|phase|status|
    zustand|messzustand|vorher nachher|messart|
    etat|avant apres|type de mesure|
    estado|antes despues|tipo de medida|
    stato|prima dopo|tipo misura|
    toestand|voor na|soort meting|momento|prova|momento misura|moment|when tested|as found as left|found or left`,
  statistic:
    'statistic|stat|statistics|value type|min max mean|min mean max|statistik|statistique|estadistica|statistica|statistiek',
  adjusted:
    'adjusted|burner adjusted|adjustment|adjustment made|eingestellt|brenner eingestellt|nachgestellt|regle|reglage effectue|ajustado|regolato|afgesteld',
  visit:
    'visit|visit id|visit no|work order|wo|work order no|order no|job|job no|job number|test no|test number|record|record no|auftrag|auftragsnr|auftragsnummer|intervention|ordre|no intervention|orden|orden de trabajo|ordine|intervento|opdracht|werkbon|bezoek',
  visit_reason: 'visit reason|reason|reason for visit|call type|anlass|grund|motif|motivo|reden|aanleiding',
  technician:
    'technician|tech|tested by|tester|operator|engineer|performed by|techniker|monteur|prufer|messung durch|technicien|operateur|intervenant|tecnico|operario|operatore|technicus|uitvoerder',
  fuel: 'fuel|fuel type|gas type|brennstoff|brennstoffart|combustible|type combustible|combustibile|tipo combustibile|brandstof',
  firing_rate_pct:
    'firing rate|firing rate pct|modulation|burner output|output|load pct|leistung|brennerleistung|modulationsgrad|taux de charge|taux modulation|modulacion|potencia|modulazione|potenza|modulatie|vermogen',
  o2_pct:
    'o2|oxygen|o2 dry|dry o2|o2 content|sauerstoff|o2 gehalt|o2 trocken|oxygene|o2 sec|oxigeno|o2 seco|ossigeno|o2 secco|zuurstof|o2 droog',
  o2_wet_pct: 'o2 wet|wet o2|trim o2|o2 trim|o2 feucht|o2 nass|o2 humide|o2 humedo|o2 umido|o2 nat|o2 vochtig',
  co2_pct:
    'co2|carbon dioxide|co2 dry|kohlendioxid|co2 gehalt|co2 trocken|dioxyde de carbone|co2 sec|dioxido de carbono|anidride carbonica|kooldioxide|koolstofdioxide',
  co2_from: 'co2 from|co2 basis|co2 source|co2 measured or calculated',
  co_raw:
    'co raw|raw co|co roh|rohes co|co measured|co dry|co as measured|co ppm raw|co diluted|co gemessen|co verdunnt|co trocken|co brut|co mesure|co sec|co medido|co bruto|co diluido|co misurato|co grezzo|co diluito|co gemeten|co droog|co verdund|co ppm dry|co dry ppm|co raw ppm|co measured ppm|co gemessen ppm|co unkorrigiert ppm|co mesure ppm|co brut ppm|co medido ppm|co misurato ppm|co gemeten ppm|co as read|co actual|co unkorrigiert|co niet gecorrigeerd',
  co: 'co|co ppm|ppm co|carbon monoxide|kohlenmonoxid|monoxyde de carbone|monoxido de carbono|monossido di carbonio|koolmonoxide|co gehalt',
  co_air_free_ppm: `co air free|co airfree|air free co|airfree co|co af|co undiluted|undiluted co|co corrected to 0 o2|co 0 o2|co corrected|co corr|
    co unverdunnt|co unverd|cou|co u|unverdunntes co|co unverdunt|
    co non dilue|co sans air|co corrige|co sin diluir|co sin aire|co corregido|co corretto|co non diluito|co senza aria|co onverdund|co luchtvrij|co gecorrigeerd|coaf|co air free ppm|co onverd|co corrige 0 o2|co corrige a 0 o2|co 0 o2 ppm|co at 0 o2|co 0 % o2|co ref 0 o2`,
  nox_ppm:
    'nox|nitrogen oxides|oxides of nitrogen|stickoxide|oxydes d azote|oxidos de nitrogeno|ossidi di azoto|stikstofoxiden',
  flue: `flue|flue temp|flue temperature|flue gas|flue gas temp|flue gas temperature|stack|stack temp|stack temperature|t flue|t stack|ts|tg|tf|t gas|t fumes|exhaust temp|exhaust temperature|exhaust|exhaust t|flue gas t|stack gas temp|fg temp|gas temp|
    abgastemperatur|abgastemp|abgas|t abgas|abgas temp|abgas temperatur|ta abgas|at|
    temperature fumees|t fumees|temp fumees|fumees|temperature des fumees|
    temperatura humos|ta humos|temp humos|t humos|humos|temperatura de humos|temperatura gases|temp gases|
    temperatura fumi|temp fumi|t fumi|fumi|
    rookgastemperatuur|rookgastemp|rookgas|t rookgas|temperatuur rookgas|tstack|stk temp|stack t|tflue|flue t|rokgastemp|t rook|abgas t|stktemp`,
  air: `air|air t|amb|amb temp|ambient t|comb air|comb air temp|comb air t|inlet air|intake air|air temp|air temperature|ambient|ambient temp|ambient temperature|t air|t amb|t ambient|combustion air|combustion air temp|combustion air temperature|room temp|intake temp|intake air temp|inlet air temp|supply air temp|
    lufttemperatur|verbrennungsluft|verbrennungslufttemperatur|verbrennungsluft temperatur|verbrennungslufttemp|t luft|tl|luft|vt|raumtemperatur|umgebungstemperatur|
    temperature air|temp air|temperature ambiante|temp ambiante|air comburant|t air comburant|temperature air comburant|
    temperatura aire|ta amb|ta ambiente|ta aire|t aanzuig|t aanzuiglucht|temp aria comb|t aria comb|temp aire|temperatura ambiente|temp ambiente|t aire|aire|aire comburente|
    temperatura aria|temp aria|t aria|aria|aria comburente|temperatura aria comburente|
    luchttemperatuur|verbrandingslucht|verbrandingsluchttemperatuur|t lucht|lucht|omgevingstemperatuur|verbr lufttemp|verbr luft|verbrennungslufttemp|lufttemp|lufttemperatur|t ambiante|temperature ambiante|temp ambiante|rm temp|t room|tamb|t inlet|inlet|umgebungstemp|t umgebung|t luft|t lucht|temp ambiente|t ambiente|t aria`,
  water_return:
    'water return|return|return temp|return water|return water temp|return temperature|rwt|rucklauf|rucklauftemperatur|t rucklauf|retour|temperature retour|t retour|retorno|temperatura retorno|ritorno|temperatura ritorno|retourtemperatuur',
  water_supply:
    'water supply|supply water|supply water temp|flow temp|flow temperature|supply temp|hot water temp|leaving water temp|vorlauf|vorlauftemperatur|t vorlauf|depart|temperature depart|t depart|ida|impulsion|temperatura impulsion|mandata|temperatura mandata|aanvoer|aanvoertemperatuur',
  supply_static: `supply static|supply burner off|gas supply burner off|supply no flow|static|static pressure|gas static|static gas pressure|gas pressure static|supply pressure static|static supply pressure|static inlet pressure|inlet static|lockup|lock up pressure|standing pressure|gas standing pressure|gas standing|
    ruhedruck|gasruhedruck|gasdruck ruhe|gasanschlussdruck ruhe|
    pression statique|pression gaz statique|pression gaz arret|presion estatica|presion gas estatica|pressione statica|pressione gas statica|statische druk|statische gasdruk|voordruk statisch`,
  supply_running: `supply running|supply burner on|gas supply burner on|running|dynamic|dynamic pressure|running pressure|gas dynamic|gas running|dynamic gas pressure|gas pressure dynamic|supply pressure dynamic|supply pressure running|dynamic supply pressure|running supply pressure|dynamic inlet pressure|inlet dynamic|working pressure|gas working pressure|gas working|inlet pressure running|
    dyn|gas dyn|dyn pressure|dyn gas pressure|flow pressure|gas flow pressure|
    fliessdruck|gasfliessdruck|gasdruck fliess|anschlussfliessdruck|gasanschlussdruck fliess|
    pression dynamique|pression gaz dynamique|pression gaz marche|presion dinamica|presion gas dinamica|pressione dinamica|pressione gas dinamica|dynamische druk|dynamische gasdruk|voordruk dynamisch`,
  manifold:
    'manifold|manifold pressure|burner pressure|burner head pressure|orifice pressure|dusendruck|brennerdruck|pression rampe|pression bruleur|pression injecteur|presion quemador|presion colector|pressione bruciatore|pressione ugello|branderdruk|sproeierdruk',
  draft:
    'draft|draught|flue draft|stack draft|flue draught|breech draft|draft pressure|zug|kaminzug|schornsteinzug|forderdruck|tirage|depression|depression cheminee|tiro|tiro chimenea|tiraggio|schoorsteentrek|trek',
  efficiency_printed_pct:
    'efficiency printed|efficiency|eff|eta|combustion efficiency|effc|gross efficiency|net efficiency|efficiency gross|efficiency net|combustion efficiency gross|combustion efficiency net|wirkungsgrad|feuerungstechnischer wirkungsgrad|rendement|rendement combustion|rendimiento|rendimiento combustion|rendimento|rendimento combustione|rendement verbranding|rendement pci|rendement pcs|rend|rdto|eff g|eff n|eff net|eff gross|rendimiento pci|rendimento pci|net eff|gross eff|nett eff',
  excess_air_printed_pct:
    'excess air printed|excess air|exc air|ea|xair|luftuberschuss|exces d air|exces air|exceso de aire|exceso aire|eccesso d aria|eccesso aria|luchtovermaat',
  lambda:
    'lambda|air ratio|luftzahl|luftverhaltnis|facteur d air|indice d air|coeficiente de aire|indice d aria|luchtfactor',
  flame_signal_uA:
    'flame signal|flame current|flame signal ua|flame|ionisation|ionization|ionization current|ionisationsstrom|flammensignal|courant d ionisation|signal flamme|corriente de ionizacion|senal de llama|corrente di ionizzazione|ionisatiestroom|vlamsignaal',
  heat_input_clocked:
    'heat input clocked|clocked input|clocked heat input|metered input|heat input|measured input|feuerungsleistung gemessen|debit calorifique|potencia medida|portata termica|belasting gemeten',
  analyzer:
    'analyzer|analyser|instrument|analyzer id|analyser id|instrument id|serial|serial no|serial number|instrument no|meter|device|messgerat|geratenummer|seriennummer|serien nr|messgeratenr|analyseur|appareil de mesure|no serie|numero de serie|analizador|instrumento|n serie|analizzatore|strumento|matricola|meetinstrument|meter nr|serienummer',
  calibrated_on:
    'calibrated on|calibration|calibration date|last calibration|cal date|calibrated|kalibriert|kalibriert am|letzte kalibrierung|etalonnage|date etalonnage|calibracion|fecha calibracion|calibrazione|data taratura|taratura|kalibratie|gekalibreerd op',
  returned_to_service:
    'returned to service|back in service|restored|wieder in betrieb|remis en service|puesto en servicio|rimesso in servizio|weer in bedrijf',
  barometer:
    'barometer|barometric pressure|atmospheric pressure|baro|luftdruck|pression atmospherique|pression barometrique|presion atmosferica|pressione atmosferica|pressione barometrica|luchtdruk',
  co_ambient_ppm:
    'co ambient|ambient co|room co|co room|co umgebung|umgebungs co|co raum|co ambiant|co ambiente|co omgeving',
  note: 'note|notes|comment|comments|remark|remarks|observations|bemerkung|bemerkungen|anmerkung|kommentar|notiz|remarque|remarques|commentaire|observaciones|comentario|notas|osservazioni|commento|opmerking|opmerkingen',
};

/** Plain head -> field name; 'co_raw', 'co' and 'lambda' are heads that need a second look. */
export const HEAD_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries(HEADS).flatMap(([field, list]) => list.split('|').map((word) => [plainWords(word), field] as const)),
);

/** Words for fire and state inside a head ('O2 high fire', 'CO vorher'), longest first; only these count there. */
const QUALIFIERS: Readonly<Record<string, string>> = {
  'fire:high':
    'high|high fire|hi fire|hi|hf|full load|full fire|full rate|volllast|vl|grosslast|gl|hochlast|nennlast|stufe 2|pleine charge|grand feu|grande allure|plena carga|max pot|pot max|potenza massima|carga maxima|fuego alto|llama alta|pieno carico|carico massimo|fiamma alta|alta fiamma|vollast|hooglast|hoogvuur',
  'fire:low':
    'low|low fire|lo fire|lo|lf|part load|partial load|teillast|tl|kleinlast|kl|schwachlast|stufe 1|charge partielle|petit feu|petite allure|carga parcial|min pot|pot min|potenza minima|carga minima|fuego bajo|llama baja|carico parziale|carico minimo|fiamma bassa|bassa fiamma|deellast|laaglast|laagvuur',
  'fire:mid': 'mid|mid fire|mittellast|zwischenlast|charge moyenne|carga media|carico medio|middellast',
  'fire:single': 'single|single stage',
  'state:as_found':
    'as found|found|before|before adjustment|vorher|vor einstellung|avant|avant reglage|antes|antes de ajuste|antes del ajuste|trovato|vorgefunden|al llegar|prima|prima della regolazione|voor|voor afstelling|aangetroffen',
  'state:as_left':
    'as left|left|after|after adjustment|nachher|nach einstellung|apres|apres reglage|despues|despues de ajuste|despues del ajuste|lasciato|hinterlassen|al salir|dopo|dopo la regolazione|na|na afstelling|achtergelaten',
};

export interface Qualifier {
  readonly words: string;
  readonly kind: 'fire' | 'state';
  readonly value: string;
}

export const HEAD_QUALIFIERS: readonly Qualifier[] = Object.entries(QUALIFIERS)
  .flatMap(([key, list]) => {
    const [kind, value] = key.split(':');
    return list.split('|').map((words) => ({ words, kind: kind as 'fire' | 'state', value }));
  })
  .sort((a, b) => b.words.length - a.words.length);
