/** Sentences of the cell that derives. */
export const notText = (parameter: string, found: string): string =>
  `Derive: ${parameter} is ${found}; give it as text.`;
export const noReadingsNamed = (): string => 'Derive: no cell of readings is named; name one, such as readings.';
export const notInRange = (what: string, least: number, most: number, found: string): string =>
  `Derive: ${what} is ${found}; give a number from ${least} to ${most}.`;
export const notATable = (parameter: string): string =>
  `Derive: ${parameter} is not of the form that is read; take the default as a pattern.`;
export const notASpread = (name: string, quantity: string): string =>
  `Derive: the class ${name} has no uncertainty for ${quantity}; give {"absolute": number, "relative": number}, neither below 0.`;
export const unknownClass = (analyzer: string, name: string, known: string): string =>
  `Derive: ${analyzer === '' ? 'the default class' : `analyzer ${analyzer}`} is of class "${name}", which is not listed; use one of ${known}.`;
export const notExponents = (behavior: string): string =>
  `Derive: the density exponents of ${behavior} are incomplete; give temperature, pressure, temperatureSd and seasonSd, each between -2 and 2.`;
export const notASource = (found: string, known: string): string =>
  `Derive: the source of the density exponents is ${found}; use one of ${known}.`;
export const notAColumn = (found: string): string =>
  `Derive: a column of your own is ${found}; give {"name": ..., "unit": ..., "formula": ...}.`;
export const badColumnName = (name: string): string =>
  `Derive: a column of your own is called "${name}"; use letters, digits and _, beginning with a letter.`;
export const badColumnUnit = (name: string, unit: string): string =>
  `Derive: the column ${name} is in "${unit}", a unit that is not known; use one such as %, Pa, Cel, kW.h, or leave it empty.`;
export const nameOfOurs = (name: string): string =>
  `Derive: ${name} is a relation or a constant of the notebook; give a column of your own another name.`;
export const columnTwice = (name: string): string =>
  `Derive: two columns of your own write ${name} (each column also writes its uncertainty under its name with _sd); give one of them another name.`;
export const columnTaken = (name: string): string =>
  `Derive: the column ${name} is already there; give your own another name.`;
export const noReadings = (cell: string): string =>
  `Derive: the cell ${cell} holds no accepted readings; name a cell of the kind readings.`;
export const lacksColumns = (cell: string, columns: string): string =>
  `Derive: the readings of ${cell} lack ${columns}; name a cell of the kind readings.`;
export const noUnits = (cell: string): string =>
  `Derive: the cell ${cell} holds no register of units; name a cell of the kind register, or none.`;
export const unknownFuels = (names: string, rows: number, reason: string): string =>
  `${rows} ${rows === 1 ? 'reading has' : 'readings have'} a fuel that is not known (${names}), so that nothing is derived for ${rows === 1 ? 'it' : 'them'}. ${reason}`;

const count = (rows: number, one: string, many: string): string => `${rows} ${rows === 1 ? one : many}`;

/** What a flag says, with the number of readings that carry it. */
export const flagRemark = (flag: string, rows: number): string => {
  const readings = count(rows, 'reading', 'readings');
  const words = FLAG_WORDS[flag];
  return words === undefined ? `${readings}: ${flag}.` : `${readings}: ${words}`;
};

const FLAG_WORDS: Readonly<Record<string, string>> = {
  fuel_assumed: 'no fuel is named anywhere; natural_gas was taken. Name it in the register or give a default fuel.',
  fuel_unknown: 'the fuel is not known; nothing is derived.',
  fuel_ambiguous: 'the unit burns several fuels and the reading names none; its first in the register was taken.',
  unit_not_registered: 'the unit is not in the register; its burner is not known.',
  air_assumed: 'no air temperature; the default was taken, with its wide uncertainty.',
  air_impossible:
    'the air temperature lies outside -50 to 100 °C: a wrong unit, or a probe that is off. No loss, efficiency or reference air is derived.',
  barometer_impossible:
    'the barometer lies outside 50 to 110 kPa, often hPa in a column of kPa; the site’s standard pressure was taken.',
  altitude_missing:
    'the barometer stands at a mountain’s height and no altitude is registered; no pressure correction.',
  season_not_removed:
    'the burner’s behavior is not known or has no established exponent; season is left in, with a wide uncertainty.',
  o2_impossible: 'O2 is 20.9 % or more, or below 0: the probe was not in the flue. Nothing is derived from it.',
  o2_zero: 'O2 is 0 %: no excess air, or a reading that is none.',
  o2_very_high: 'O2 is above 15 %; air-free CO is unreliable there.',
  co2_impossible: 'CO2 is above what the fuel can make: another fuel, or a wrong reading. Nothing is derived from it.',
  o2_and_co2_disagree: 'O2 and CO2 do not fit this fuel together.',
  flue_below_air: 'the flue is colder than the combustion air; no loss or efficiency is derived.',
  flue_impossible:
    'the flue temperature lies outside -50 to 1200 °C: a wrong unit, or a broken probe. No loss or efficiency is derived.',
  co_impossible: 'CO is below 0 or more than there can be: the sensor was not at zero. Nothing is derived from it.',
  nox_impossible: 'NOx is below 0 or more than there can be: the sensor was not at zero. Nothing is derived from it.',
  co_over_range: 'CO is at least what is shown; it is never an exact value.',
  co_given_air_free: 'CO came air-free and was taken as it is.',
  condensing: 'the flue gas is below its water dew point; latent heat is counted as won back.',
  rich_at_reference: 'at reference air the burner would be short of air.',
  running_above_static: 'the supply reads higher running than static.',
};

export const deriveAnswer = (rows: number, efficiency: number, air: number, drop: number): string =>
  rows === 0
    ? 'No reading to derive from.'
    : `${count(rows, 'reading', 'readings')}: excess air of ${air}, efficiency of ${efficiency}, supply drop of ${drop}, each with its uncertainty.`;

export const uncertaintyRemark = (o2: number, temperature: number, name: string): string =>
  `Uncertainties are defaults of class ${name} (O2 ± ${o2} points, flue ± ${temperature} K, standard), not those of a calibration certificate; edit the table of classes where yours are known.`;

const BURNERS: Readonly<Record<string, string>> = {
  fixed_volume: 'burners with a fan of fixed volume',
  pneumatic: 'pneumatic 1:1 burners',
  trim: 'burners with O2 trim',
  atmospheric: 'atmospheric burners',
  unknown: 'burners of unknown kind',
};
const two = (value: number): string => value.toFixed(2);

/** What the fleet says of a density exponent, and whether it is used. */
export const exponentRemark = (
  behavior: string,
  verdict: string,
  swings: number,
  units: number,
  [exponent, lower, upper]: readonly [number, number, number],
  used: number,
  asked: boolean,
): string => {
  const who = Object.hasOwn(BURNERS, behavior) ? BURNERS[behavior] : behavior;
  const what = `${count(swings, 'swing', 'swings')} between visits of ${count(units, 'unit', 'units')}`;
  if (verdict === 'too_few')
    return `The density exponent of ${who} stays ${two(used)}: ${what} are too few to estimate it; 30 of 8 units are needed.`;
  if (verdict === 'too_narrow')
    return `The density exponent of ${who} stays ${two(used)}: over ${what} the air changed too little to estimate it.`;
  const found = `${what} put the density exponent of ${who} at ${two(exponent)} (${two(lower)} to ${two(upper)}, 95 %)`;
  return asked
    ? `${found}, and it is used.`
    : `${found}; ${two(used)} was used. Take the exponents from the fleet, or edit the table, if yours differ.`;
};
