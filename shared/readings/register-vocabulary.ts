import { dateField, type Field, numberField, powerField, pressureField, textField, wordField } from './fields.ts';
import { plainWords } from './plain-words.ts';
import { type Vocabulary, vocabularyOf } from './vocabulary.ts';

export const FIRES = ['high', 'mid', 'low', 'single'] as const;
export const QUANTITIES = ['co2', 'o2'] as const;
const LIMITS = ['target', 'tolerance', 'lower', 'upper', 'service_lower', 'service_upper'] as const;

/** How fuel is billed -> UCUM code; volumes count at 15 °C and 101.325 kPa. */
export const FUEL_UNITS: Readonly<Record<string, string>> = {
  kWh: 'kW.h',
  MMBtu: '10*6.[Btu_IT]',
  therm: '10*5.[Btu_IT]',
  m3: 'm3',
  MWh: 'MW.h',
  GJ: 'GJ',
  MJ: 'MJ',
  CCF: '10*2.[cft_i]',
  Mcf: '10*3.[cft_i]',
  gal: '[gal_us]',
  L: 'L',
};

const FIELDS: readonly Field[] = [
  textField('unit'),
  wordField('fuel', 'fuel'),
  dateField('valid_from'),
  textField('site'),
  textField('building'),
  textField('gas_zone'),
  wordField('service', 'service'),
  wordField('burner', 'burner'),
  wordField('firing', 'firing'),
  wordField('fuel_air_control', 'fuel_air_control'),
  wordField('air_source', 'air_source'),
  wordField('trim', 'yes_no'),
  wordField('condensing', 'yes_no'),
  powerField('heat_input_high'),
  powerField('heat_input_low'),
  ...QUANTITIES.flatMap((quantity) =>
    FIRES.flatMap((fire) => LIMITS.map((limit) => numberField(`${quantity}_${fire}_${limit}_pct`, '%'))),
  ),
  pressureField('supply_min', false),
  pressureField('supply_max', false),
  pressureField('supply_drop_limit', false),
  { ...numberField('annual_fuel', ''), suffixes: FUEL_UNITS },
  numberField('fuel_price', '{currency}'),
  numberField('low_fire_share', '1'),
  dateField('installed_on'),
  dateField('retired_on'),
  numberField('altitude_m', 'm'),
  numberField('max_interval_months', 'mo'),
  dateField('next_visit_on'),
  wordField('standby', 'yes_no'),
  textField('access_note'),
  textField('tap_note'),
  textField('adjust_high_note'),
  textField('adjust_low_note'),
];

const HEADS: Readonly<Record<string, string>> = {
  unit: 'unit id|impianto|installation|instalacion|installatie|boiler tag|boiler name|unit tag|equipment tag|asset name|boiler|boiler id|appliance|equipment|equipment id|asset|asset id|tag|anlage|anlagennummer|kessel|kesselnummer|chaudiere|appareil|caldera|equipo|caldaia|apparecchio|ketel|toestel',
  fuel: 'fuel type|brennstoff|combustible|combustibile|brandstof',
  site: 'campus|location|standort|liegenschaft|lieu|sitio|emplazamiento|sito|sede|locatie|terrein',
  building: 'bldg|gebaude|batiment|edificio|gebouw',
  gas_zone: 'gas district|gas supply zone|gas network zone|gaszone|netzgebiet|zone de gaz|zona de gas|zona gas',
  service: 'use|application|verwendung|usage|uso|utilizzo|gebruik',
  burner: 'burner type|brenner|brennerart|bruleur|quemador|bruciatore|brander',
  firing: 'firing type|stages|betriebsart|stufigkeit',
  trim: 'o2 trim|oxygen trim|o2 regelung',
  condensing: 'condensing boiler|brennwert|condensation|condensacion|condensazione|condenserend',
  heat_input_high:
    'max heat input|maximum input|heat input|input|rated input|max input|input high fire|nennwarmebelastung|feuerungsleistung|debit calorifique nominal|potencia nominal|portata termica nominale|nominale belasting',
  heat_input_low:
    'min input|input low fire|kleinste warmebelastung|debit calorifique min|potencia minima|portata termica minima|minimale belasting',
  installed_on:
    'installed|install date|installation date|baujahr|eingebaut|date installation|fecha instalacion|data installazione|geinstalleerd',
  retired_on: 'retired|removed|stillgelegt',
  altitude_m: 'altitude|elevation|hohe uber meer|hohe',
  supply_min:
    'gasdruck min|min gasdruck|mindestgasdruck|pression gaz min|presion gas min|pressione gas min|gasdruk min|min gas press|min gas pressure|gas pressure min|min inlet pressure|minimum inlet pressure|min supply pressure|supply pressure min|minimum supply pressure',
  supply_max:
    'gasdruck max|max gasdruck|pression gaz max|presion gas max|pressione gas max|gasdruk max|max gas press|max gas pressure|gas pressure max|max inlet pressure|maximum inlet pressure|max supply pressure|supply pressure max|maximum supply pressure',
  fuel_price: 'price|fuel cost|preis|prix|precio|prezzo|prijs',
  annual_fuel:
    'annual fuel use|fuel per year|annual consumption|jahresverbrauch|consommation annuelle|consumo anual|consumo annuo|jaarverbruik',
  max_interval_months: 'interval months|max interval',
  next_visit_on: 'next visit|next due|nachster termin',
  access_note: 'access|zugang|acces|acceso|accesso|toegang',
};

const FIRE_WORDS: Readonly<Record<string, readonly string[]>> = {
  high: ['high', 'high fire', 'hi', 'hf', 'full load', 'volllast', 'grand feu', 'fuego alto', 'alta fiamma', 'vollast'],
  mid: ['mid', 'mid fire'],
  low: ['low', 'low fire', 'lo', 'lf', 'part load', 'teillast', 'petit feu', 'fuego bajo', 'bassa fiamma', 'deellast'],
  single: ['single', 'single stage'],
};
const LIMIT_WORDS: Readonly<Record<string, readonly string[]>> = {
  target: ['target', 'setpoint', 'set point', 'sollwert', 'consigne', 'consigna', 'setpunt'],
  tolerance: ['tolerance', 'tol', 'toleranz', 'tolerancia', 'tolleranza', 'tolerantie'],
};

/** "O2 target HF", "Target O2 high" and "O2 high fire target" are all o2_high_target_pct. */
const LIMIT_HEADS = QUANTITIES.flatMap((quantity) =>
  Object.entries(FIRE_WORDS).flatMap(([fire, fires]) =>
    Object.entries(LIMIT_WORDS).flatMap(([limit, limits]) =>
      fires.flatMap((word) =>
        limits.flatMap((name) =>
          inEveryOrder(quantity, name, word).map(
            (head) => [plainWords(head), `${quantity}_${fire}_${limit}_pct`] as const,
          ),
        ),
      ),
    ),
  ),
);

function inEveryOrder(a: string, b: string, c: string): readonly string[] {
  const orders = [
    [a, b, c],
    [a, c, b],
    [b, a, c],
    [b, c, a],
    [c, a, b],
    [c, b, a],
  ];
  return orders.map((words) => words.join(' '));
}

export const REGISTER_VOCABULARY: Vocabulary = vocabularyOf(
  'register',
  FIELDS,
  new Map([
    ...LIMIT_HEADS,
    ...Object.entries(HEADS).flatMap(([field, list]) =>
      list.split('|').map((head) => [plainWords(head), field] as const),
    ),
  ]),
);
