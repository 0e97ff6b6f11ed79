import { checkSign } from '../../../shared/messages/raise.ts';
import { benjaminiHochberg } from '../../../shared/statistics/benjamini-hochberg.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import type { RaiseParameters } from '../parameters.ts';
import { flueRise } from './flue-rise.ts';
import { visitedLanes } from './lane-visits.ts';
import { quickReturns } from './quick-returns.ts';
import { scatterGrowth } from './scatter-growth.ts';
import type { Sign } from './sign.ts';

/**
 * Signs that are no drift of a level, each with its own test, kept where the false discovery rate (Benjamini and Hochberg,
 * over all tests of that sign) allows.
 */
export function findSigns(fleet: Fleet, parameters: RaiseParameters, skip: (unit: string) => boolean): Finding[] {
  const lanes = visitedLanes(fleet, skip);
  const tests = [
    lanes.flatMap((lane) => flueRise(lane) ?? []),
    lanes.flatMap((lane) => scatterGrowth(lane) ?? []),
    quickReturns(fleet, skip),
  ];
  return tests.flatMap((signs) => discoveries(signs, parameters.signFalseDiscoveryRate));
}

function discoveries(signs: readonly Sign[], largestRate: number): Finding[] {
  const rates = benjaminiHochberg(signs.map(({ pValue }) => pValue));
  return signs.flatMap((sign, i) => (sign.matters && rates[i] <= largestRate ? [toFinding(sign, rates[i])] : []));
}

const toFinding = (
  { unit, fuel, fire, reason, evidence, readingsUsed }: Sign,
  falseDiscoveryRate: number,
): Finding => ({
  unit,
  fuel,
  fire,
  reason,
  probability: Number.NaN,
  byDate: Number.NaN,
  falseDiscoveryRate,
  evidence,
  checkFirst: checkSign(reason),
  readingsUsed,
  urgency: -falseDiscoveryRate,
});
