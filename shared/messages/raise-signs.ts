/** Evidence of what is no drift of a level. */
import { fireName, fuelName } from './lanes.ts';
import { number, percent } from './words.ts';

const at = (fire: string, fuel: string): string =>
  `${fireName(fire)} fire${fuel === '' ? '' : ` on ${fuelName(fuel)}`}`;

export interface FlueFacts {
  readonly visits: number;
  readonly from: string;
  readonly to: string;
  readonly lastC: number;
}

export const flueRising = (
  fire: string,
  fuel: string,
  slope: number,
  lower: number,
  upper: number,
  { visits, from, to, lastC }: FlueFacts,
): string =>
  `${at(fire, fuel)}: at the same O2 the flue gets ${number(slope, 1)} °C hotter a year (95 % ${number(lower, 1)} to ${number(upper, 1)}, ${visits} visits from ${from} to ${to}), ${number(lastC, 0)} °C at the last.`;
export const scatterGrowing = (
  fire: string,
  fuel: string,
  older: number,
  newer: number,
  steps: number,
  since: string,
): string =>
  `${at(fire, fuel)}: what a visit finds differs from what the last one left by ${number(newer, 2)} points of O2 (standard deviation) since ${since}, against ${number(older, 2)} before, over ${steps} visits.`;
export const returnsQuickly = (soon: number, visits: number, days: number, rate: number, last: string): string =>
  `${soon} of ${visits} visits were followed within ${days} days by another that no plan is known of, the last on ${last}, where the fleet has ${percent(rate)}.`;
