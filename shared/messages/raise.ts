/** Sentences of the raise cell: one of evidence and one of what to check first for every reason. */
import { fireName, fuelName, quantityName } from './lanes.ts';
import { count, number, percent, pressure } from './words.ts';

export const badNumber = (what: string, found: string, least: number, most: number): string =>
  `raise: ${what} must lie between ${least} and ${most}, it is ${found}; give a number in that range.`;
export const badChoice = (what: string, found: string, choices: string): string =>
  `raise: ${what} must be one of ${choices}, it is ${found}; choose one of these.`;
export const badCell = (parameter: string, found: string): string =>
  `raise: ${parameter} must be the name of a cell, or empty, it is ${found}; give a name.`;
export const wrongInput = (cell: string, table: string, columns: string): string =>
  `raise: table ${table} of cell ${cell} lacks ${columns}; name a cell of the right kind.`;

const at = (fire: string, fuel: string): string =>
  `${fireName(fire)} fire${fuel === '' ? '' : ` on ${fuelName(fuel)}`}`;
const where = (file: string, line: number): string =>
  file === '' ? '' : ` (${file}${Number.isFinite(line) ? ` line ${number(line, 0)}` : ''})`;
const stateWords: Readonly<Record<string, string>> = {
  as_found: 'as found',
  as_left: 'as left',
  trial: 'on trial',
};

// --- safety -----------------------------------------------------------------------------------------------------

export interface CoFacts {
  readonly fire: string;
  readonly fuel: string;
  readonly state: string;
  readonly rawPpm: number;
  /** On the basis of the limit. */
  readonly valuePpm: number;
  readonly o2Pct: number;
  readonly takenAt: string;
  readonly file: string;
  readonly line: number;
  readonly limitPpm: number;
  readonly basis: string;
}

export const basisName = (basis: string): string =>
  ({ air_free: 'air-free', at_3pct_o2: 'at 3 % O2', as_measured: 'as measured' })[basis] ?? basis;

const coStill = ({ limitPpm, basis }: CoFacts): string =>
  `no later valid reading at this fire and fuel is below ${number(limitPpm, 0)} ppm ${basisName(basis)}`;
const coWhen = ({ state, takenAt, file, line }: CoFacts): string =>
  `${stateWords[state] ? `${stateWords[state]} ` : ''}on ${takenAt}${where(file, line)}`;
const coOnBasis = ({ valuePpm, basis }: CoFacts, atLeast: string): string =>
  basis === 'as_measured'
    ? ''
    : Number.isFinite(valuePpm)
      ? `, ${atLeast}${number(valuePpm, 0)} ppm ${basisName(basis)}`
      : `, ${basisName(basis)} not known`;
const oxygen = (o2Pct: number): string => (Number.isFinite(o2Pct) ? ` at ${number(o2Pct, 1)} % O2` : '');

export const coOverRange = (facts: CoFacts): string =>
  `${at(facts.fire, facts.fuel)} drove CO over the analyzer's range, over ${number(Number.isFinite(facts.rawPpm) ? facts.rawPpm : facts.valuePpm, 0)} ppm${oxygen(facts.o2Pct)}${coOnBasis(facts, 'at least ')}, ${coWhen(facts)}, and ${coStill(facts)}.`;
export const coHigh = (facts: CoFacts): string =>
  `${at(facts.fire, facts.fuel)} read ${Number.isFinite(facts.rawPpm) ? `${number(facts.rawPpm, 0)} ppm CO` : 'CO'}${oxygen(facts.o2Pct)}${coOnBasis(facts, '')}, ${coWhen(facts)}, and ${coStill(facts)}.`;
export const checkCo = (): string =>
  'Before it runs again: CO in the room, venting, combustion air and the heat exchanger; CO alone does not say which way the air should go; a qualified person decides, by rating plate, maker and local code.';

export const supplyOverMaximum = (
  foundPa: number,
  maximumPa: number,
  takenAt: string,
  file: string,
  line: number,
): string =>
  `The gas supply stood at ${pressure(foundPa)} on ${takenAt}${where(file, line)}, above the rating plate's maximum of ${pressure(maximumPa)}, and no later static reading is below it.`;
export const checkSupplyMaximum = (): string =>
  'Shut the gas and correct the supply first: regulator set point, lock-up and vent; no tuning and no firing until static is below the rating plate’s maximum.';

// --- left open --------------------------------------------------------------------------------------------------

export const notReturned = (takenAt: string, technician: string, file: string, line: number): string =>
  `The visit of ${takenAt}${technician === '' ? '' : ` by ${technician}`}${where(file, line)} ends with the unit not returned to service, and no later reading says that it was.`;
export const checkReturned = (): string =>
  'Set point restored, firing rate back to automatic, caps and plugs refitted and leak-tested, access level closed.';

// --- gas supply -------------------------------------------------------------------------------------------------

export const supplyUnderMinimum = (runningPa: number, minimumPa: number, staticPa: number, readOn: string): string =>
  `Running supply pressure was ${pressure(runningPa)} on ${readOn}, under the rating plate's minimum of ${pressure(minimumPa)}${Number.isFinite(staticPa) ? `, with ${pressure(staticPa)} static` : ''}.`;
export const checkSupplyMinimum = (): string =>
  'Do not tune; find out why: manometer and tap, other loads on the line, cocks fully open, filter, regulator vent and spring, then meter and pipe size.';

export interface DropFacts {
  readonly dropPa: number;
  readonly dropSdPa: number;
  readonly limitPa: number;
  readonly staticPa: number;
  readonly runningPa: number;
  readonly slopePa: number;
  readonly slopeLowerPa: number;
  readonly slopeUpperPa: number;
  /** '' where it is not within reach. */
  readonly exceedsOn: string;
  readonly lastReadOn: string;
  readonly readings: number;
  /** The limit is the rule of thumb of low-pressure service, not the register's. */
  readonly rule: boolean;
}

const dropLimit = ({ limitPa, rule }: DropFacts): string =>
  `${pressure(limitPa)}${rule ? ' (rule of thumb for low-pressure service)' : ''}`;

export const supplyDropOver = (facts: DropFacts): string =>
  `The supply drops ${pressure(facts.dropPa)} at its highest fire, over its limit of ${dropLimit(facts)}: ${pressure(facts.staticPa)} static and ${pressure(facts.runningPa)} running when last read on ${facts.lastReadOn}.`;
export const supplyDropGrowing = (facts: DropFacts): string =>
  `The supply drop at the highest fire is ${pressure(facts.dropPa)} and grows ${number(facts.slopePa, 1)} Pa a year (95 % ${number(facts.slopeLowerPa, 1)} to ${number(facts.slopeUpperPa, 1)}, ${count(facts.readings, 'reading', 'readings')} up to ${facts.lastReadOn})${facts.exceedsOn === '' ? '' : `, as likely as not over its limit of ${dropLimit(facts)} by ${facts.exceedsOn}`}.`;

const PATTERN_CHECKS: Readonly<Record<string, string>> = {
  restriction: 'Static holds while running falls: half-shut cock, filter or strainer, then pipe',
  regulator: 'Static and running fall together: regulator set point, vent and spring, then the inlet to it',
  creep: 'Static climbs while running holds: regulator lock-up, grit on its seat',
  shared_line:
    'Other units on this line fall too: what they share first (service regulator, meter, pipe, the utility), then read again with the other appliances on and off',
  hunting:
    'Running strays from reading to reading: watch it for some minutes at a steady fire; regulator vent, spring and size, other loads on the line',
};
export const checkSupplyDrop = (pattern: string): string =>
  `${PATTERN_CHECKS[pattern] ?? 'Static and running with all appliances on the line, cocks, filter, regulator, meter and pipe size'}; put the supply right before touching the air.`;

// --- tolerance --------------------------------------------------------------------------------------------------

export interface ToleranceFacts {
  readonly fire: string;
  readonly fuel: string;
  readonly quantity: string;
  readonly readings: number;
  readonly level: number;
  readonly sd: number;
  readonly lower: number;
  readonly upper: number;
  readonly verdict: string;
  readonly slope: number;
  readonly slopeLower: number;
  readonly slopeUpper: number;
  readonly slopeSource: string;
  /** The visit since which it drifts like this, '' where it always did. */
  readonly beganOn: string;
  readonly bandSource: string;
  readonly chance: number;
  readonly horizonOn: string;
  /** '' where it is not within reach. */
  readonly leavesOn: string;
  readonly lastVisitOn: string;
  readonly levelLeft: number;
  readonly marginLeft: number;
  readonly asMeasured: number;
  readonly bothFires: boolean;
  readonly supplyLow: boolean;
  readonly supplyRaised: boolean;
  /** Of the last reading, where that analyzer is known to read high or low, or not known since none was compared with it; else ''. */
  readonly analyzer: string;
  /** In points of `analyzerReads`, a quantity; NaN and '' where it is not known. */
  readonly analyzerBias: number;
  readonly analyzerReads: string;
  readonly control: string;
  /** Mean departure of the whole fleet in the month of the last visit, points of O2, positive lean; NaN where none is clear. */
  readonly fleetLeanerO2: number;
}

const BAND_WORDS: Readonly<Record<string, string>> = {
  setting: ' (the setting tolerance)',
  target: ' (a default width about the target)',
  as_left: ' (a default width about what was last left)',
  class_band: ' (the default for its class)',
};
const band = ({ lower, upper, bandSource }: ToleranceFacts): string =>
  `${number(lower, 2)} to ${number(upper, 2)} %${BAND_WORDS[bandSource] ?? ''}`;
const levelWords = ({ quantity, level, sd }: ToleranceFacts): string =>
  `${number(level, 2)} ± ${number(sd, 2)} % ${quantityName(quantity)} at reference air`;
const leftWords = ({ levelLeft, marginLeft, lastVisitOn, asMeasured }: ToleranceFacts): string =>
  Number.isFinite(levelLeft)
    ? ` (left at ${number(levelLeft, 2)} on ${lastVisitOn}${Number.isFinite(marginLeft) ? `, ${marginLeft >= 0 ? `${number(marginLeft, 2)} inside` : `${number(-marginLeft, 2)} outside`}` : ''}${Number.isFinite(asMeasured) ? `; the analyzer showed ${number(asMeasured, 2)}` : ''})`
    : '';
const SLOPE_WORDS: Readonly<Record<string, string>> = {
  own: 'its own readings',
  pooled: 'its own readings and its class',
  class: 'its class alone',
};
const driftWords = ({ slope, slopeLower, slopeUpper, slopeSource, beganOn }: ToleranceFacts): string =>
  Number.isFinite(slope)
    ? `, ${slope < 0 ? 'falling' : 'rising'} ${number(Math.abs(slope), 2)} a year${beganOn === '' ? '' : ` since about the visit of ${beganOn}`} (95 % ${number(slope < 0 ? -slopeUpper : slopeLower, 2)} to ${number(slope < 0 ? -slopeLower : slopeUpper, 2)}, from ${SLOPE_WORDS[slopeSource] ?? 'its readings'})`
    : '';
const biasWords = ({ analyzer, analyzerBias, analyzerReads }: ToleranceFacts): string => {
  if (analyzer === '') return '';
  return Number.isNaN(analyzerBias)
    ? `; its last reading was taken with ${analyzer}, which nothing tells apart from the units it reads: were it off, or come to be, this level would be as much`
    : `; its last reading was taken with ${analyzer}, which reads ${quantityName(analyzerReads)} ${number(Math.abs(analyzerBias), 2)} ${analyzerBias < 0 ? 'low' : 'high'} everywhere (taken out here)`;
};

const fleetWords = ({ fleetLeanerO2, lastVisitOn }: ToleranceFacts): string =>
  Number.isFinite(fleetLeanerO2)
    ? `; in the month of its last visit, ${lastVisitOn.slice(0, 7)}, the whole fleet read ${fleetLeanerO2 > 0 ? 'lean' : 'rich'} by ${number(Math.abs(fleetLeanerO2), 2)} points of O2 or more`
    : '';

export const outOfTolerance = (facts: ToleranceFacts): string =>
  `${at(facts.fire, facts.fuel)} stands at ${levelWords(facts)}${leftWords(facts)}, outside its band of ${band(facts)}${facts.verdict === 'outside_by_less' ? ', though by less than the guard band of 1.64 standard uncertainties' : ''}${driftWords(facts)}${biasWords(facts)}${fleetWords(facts)}.`;
export const leavingTolerance = (facts: ToleranceFacts): string =>
  `${at(facts.fire, facts.fuel)} stands at ${levelWords(facts)}${leftWords(facts)}${driftWords(facts)}, so its chance of having left the band of ${band(facts)} by ${facts.horizonOn} is ${percent(facts.chance)}${facts.leavesOn === '' ? '' : `, as likely as not by ${facts.leavesOn}`}${biasWords(facts)}${fleetWords(facts)}.`;

/** Rich where CO2 rises or O2 falls. */
const goesRich = ({ quantity, level, lower, upper, slope }: ToleranceFacts): boolean => {
  const upward = level > upper ? true : level < lower ? false : slope > 0;
  return quantity === 'o2_pct' ? !upward : upward;
};
const hardware = (facts: ToleranceFacts): string => {
  if (facts.bothFires)
    return goesRich(facts)
      ? 'both fires go rich alike: fan wheel, air filter and intake, flue passages'
      : 'both fires go lean alike: gas pressure at the valve, burner and gas train, air leaks in the sample line';
  const part =
    facts.control === 'linkage'
      ? 'linkage slack and set screws'
      : facts.control === 'parallel'
        ? 'the actuators and their curve'
        : facts.control === 'pneumatic'
          ? 'the ratio control and its impulse lines'
          : 'what sets the air and the gas at this fire';
  return `only this fire moves: ${part}${goesRich(facts) ? ', then fan wheel and intake for dirt' : ''}`;
};
export const checkTolerance = (facts: ToleranceFacts): string => {
  const first = [
    facts.analyzer === '' ? '' : `compare ${facts.analyzer} with another analyzer`,
    facts.supplyLow
      ? 'gas supply first, it is low enough to move O2'
      : facts.supplyRaised
        ? 'static and running gas pressure at high fire'
        : '',
    hardware(facts),
  ]
    .filter((step) => step !== '')
    .join('; then ');
  return `${first[0].toUpperCase()}${first.slice(1)}; set only by rating plate and maker, with an analyzer in the flue.`;
};

export interface RichFacts {
  readonly fire: string;
  readonly fuel: string;
  readonly takenOn: string;
  readonly o2Pct: number;
  readonly summerO2Pct: number;
  readonly summerAirC: number;
  readonly richO2Pct: number;
}
export const richInSummer = (facts: RichFacts): string =>
  `${at(facts.fire, facts.fuel)} was last read on ${facts.takenOn} at ${number(facts.o2Pct, 1)} % O2 at reference air, which combustion air of ${number(facts.summerAirC, 0)} °C would bring to about ${number(facts.summerO2Pct, 1)} %, under ${number(facts.richO2Pct, 1)} %.`;
export const checkRich = (): string =>
  'Read it again before the first heat; where the combustion air comes from and at what temperature; a qualified person sets the margin for the hottest day by rating plate and maker.';

// --- signs, data ------------------------------------------------------------------------------------------------

const SIGN_CHECKS: Readonly<Record<string, string>> = {
  flue_temperature_rising:
    'Fireside first, then waterside scale, then the input by the meter; cleaning before any change of the air.',
  scatter_growing: 'Approach each fire from above and from below: linkage slack, bearings, slipped set screws.',
  returns_quickly:
    'What the last visits had in common: the same part, the same fire, the same analyzer; then the hardware.',
};
export const checkSign = (reason: string): string => SIGN_CHECKS[reason] ?? 'Read it again at the same fire and rate.';

export const noData = (lastOn: string, months: number, limitMonths: number): string =>
  `The last reading is of ${lastOn}, ${number(months, 0)} months ago, more than the ${number(limitMonths, 0)} months after which a unit counts as unseen.`;
export const neverRead = (limitMonths: number): string =>
  `The register holds it, and there is no reading of it at all (a unit counts as unseen after ${number(limitMonths, 0)} months).`;
export const onlyTrials = (trials: number, limitMonths: number): string =>
  `${trials === 1 ? '1 trial reading, not' : `${trials} trial readings, none`} as found or as left, so nothing says how it was left (a unit counts as unseen after ${number(limitMonths, 0)} months).`;
export const onlyOtherFuels = (readings: number, fuel: string, limitMonths: number): string =>
  `${readings === 1 ? 'Its one reading is not' : `None of its ${readings} readings is`} on ${fuelName(fuel)}, which the register holds for it (a unit counts as unseen after ${number(limitMonths, 0)} months).`;
export const checkNoData = (): string =>
  'Whether it is in use, and whether its readings are filed under another id; then read it at every fire.';

export const readingDoubtful = (fire: string, fuel: string, takenAt: string, doubts: string, source: string): string =>
  `${at(fire, fuel)}: the last reading, of ${takenAt}${source}, does not fit together: ${doubts}.`;
export const sourceOf = (file: string, line: number): string => where(file, line);
export const checkDoubtful = (): string =>
  'Fuel set in the analyzer, probe seat and sample line, units of the export; read again before anything is adjusted on it.';
