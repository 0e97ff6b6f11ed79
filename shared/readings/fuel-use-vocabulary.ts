import { dateField, type Field, numberField, textField, wordField } from './fields.ts';
import { plainWords } from './plain-words.ts';
import { FUEL_UNITS } from './register-vocabulary.ts';
import { type Vocabulary, vocabularyOf } from './vocabulary.ts';

const FIELDS: readonly Field[] = [
  textField('unit'),
  wordField('fuel', 'fuel'),
  dateField('from'),
  dateField('to'),
  { ...numberField('quantity', ''), suffixes: FUEL_UNITS },
  textField('quantity_unit'),
  numberField('cost', '{currency}'),
];

const HEADS: Readonly<Record<string, string>> = {
  unit: 'unit id|impianto|installation|instalacion|installatie|boiler|boiler id|equipment|meter|asset|anlage|kessel|chaudiere|caldera|caldaia|ketel',
  fuel: 'fuel type|brennstoff|combustible|combustibile|brandstof',
  from: 'start|start date|period start|begin|von|beginn|debut|du|desde|inicio|dal|inizio|van',
  to: 'end|end date|period end|until|bis|ende|fin|au|hasta|al|fine|tot',
  quantity:
    'use|usage|consumption|amount|fuel used|energy|verbrauch|menge|consommation|consumo|cantidad|quantita|verbruik|hoeveelheid',
  quantity_unit: 'unit of measure|uom|measure|units|einheit|unite|unidad|unita di misura|eenheid',
  cost: 'costs|amount due|price|kosten|cout|montant|coste|costo|importe|importo',
};

export const FUEL_USE_VOCABULARY: Vocabulary = vocabularyOf(
  'fuel-use',
  FIELDS,
  new Map(
    Object.entries(HEADS).flatMap(([field, list]) => list.split('|').map((head) => [plainWords(head), field] as const)),
  ),
);
