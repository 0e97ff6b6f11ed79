import { checkSign } from '../../../shared/messages/raise.ts';
import { benjaminiHochberg } from '../../../shared/statistics/benjamini-hochberg.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import { flueRise } from './flue-rise.ts';
import { type VisitedLane, visitedLanes } from './lane-visits.ts';
import { quickReturns } from './quick-returns.ts';
import { scatterGrowth } from './scatter-growth.ts';
import type { Sign } from './sign.ts';

const LANES_A_PIECE = 256;

/** Signs that are no drift of a level: all tests of each sort, whatever came of them. */
export async function testSigns(
  fleet: Fleet,
  skip: (unit: string) => boolean,
  pause: () => Promise<void>,
): Promise<readonly (readonly Sign[])[]> {
  const lanes: VisitedLane[] = [];
  const rises: Sign[] = [];
  for (const lane of visitedLanes(fleet, skip)) {
    lanes.push(lane);
    const rise = flueRise(lane);
    if (rise) rises.push(rise);
    if (lanes.length % LANES_A_PIECE === 0) await pause();
  }
  const scatter = scatterGrowth(lanes);
  await pause();
  return [rises, scatter, quickReturns(fleet, skip)];
}

/** What is kept of the tests where the false discovery rate (Benjamini and Hochberg, over all tests of a sort) allows. */
export function findSigns(tests: readonly (readonly Sign[])[], largestRate: number): Finding[] {
  return tests.flatMap((signs) => discoveries(signs, largestRate));
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
