import { fireName } from './lanes.ts';
import { basisName } from './raise.ts';
import { count, number } from './words.ts';

export const expectedInside = (list: string, entries: number, inside: number): string =>
  entries === 0
    ? ''
    : `Of ${count(entries, 'fire', 'fires')} raised as ${list}, expect ${number(inside, 1)} to be found inside the band.`;
export const coLimitUsed = (ppm: number, basis: string): string =>
  `CO counts as high from ${number(ppm, 0)} ppm ${basisName(basis)}${basis === 'air_free' && ppm === 400 ? ' (ANSI Z21 test limit for vented heating equipment; field practice shuts down there)' : ''}; a high reading stays open until a later valid one at the same fire and fuel is below.`;
export const bandsByDefault = (byDefault: number, bands: number): string =>
  byDefault === 0
    ? ''
    : `${count(byDefault, 'fire is', 'fires are')} judged by a default band, of ${bands} with any; enter targets and tolerances in the register.`;
export const platesMissing = (units: number): string =>
  units === 0
    ? ''
    : `${count(units, 'unit has', 'units have')} supply readings and no rating-plate limits: change is shown, no verdict is given.`;
export const analyzerBiased = (analyzer: string, o2Bias: number, o2Sd: number, readings: number): string =>
  `Analyzer ${analyzer} reads O2 ${number(Math.abs(o2Bias), 2)} ± ${number(o2Sd, 2)} points ${o2Bias < 0 ? 'low' : 'high'} against the fleet (${number(readings, 0)} readings): have it checked before any unit that it read is blamed or tuned.`;
export const analyzersConfounded = (analyzers: string): string =>
  `The readings of ${analyzers} cannot be told apart from the units they were taken on: read one unit with two analyzers on one day.`;

export interface CoNearLimit {
  readonly unit: string;
  readonly fire: string;
  readonly ppm: number;
  readonly sd: number;
  readonly day: string;
}

export const coNearLimit = (named: readonly CoNearLimit[], all: number, limitPpm: number, basis: string): string => {
  if (all === 0) return '';
  const each = named.map(
    ({ unit, fire, ppm, sd, day }) =>
      `${unit} ${fireName(fire).toLowerCase()} fire ${number(ppm, 0)} ± ${number(sd, 0)} on ${day}`,
  );
  return `CO below the limit of ${number(limitPpm, 0)} ppm ${basisName(basis)} by less than the guard band of 1.64 standard uncertainties, so not clearly within it: ${each.join(', ')}${all > named.length ? ` and ${all - named.length} more` : ''}.`;
};

export const fleetMonth = (month: string, units: number, leanerO2: number): string =>
  `In ${month} the ${units} units then read ran ${leanerO2 > 0 ? 'lean' : 'rich'} together, by ${number(Math.abs(leanerO2), 2)} points of O2 or more, whatever the analyzer: think of the gas or the weather before any unit.`;

export const levelsTooVague = (fires: number): string =>
  fires === 0
    ? ''
    : `${count(fires, 'fire is', 'fires are')} known no better than to half a band, or the band has no width: whether they leave it cannot be said yet.`;
