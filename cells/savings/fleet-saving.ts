import { combinedSd } from '../../shared/combustion/combined-uncertainty.ts';
import { weighted } from './saving-of-visit.ts';
import type { SavingRow } from './savings-table.ts';

/** Normal quantile of a two-sided 90 % interval. */
const Z90 = 1.6448536;

/** What a fleet saved in a year, in money; the interval is 90 %. */
export interface FleetSaving {
  readonly cost: number;
  readonly lower: number;
  readonly upper: number;
  /** Rows whose cost is known. */
  readonly rows: number;
}

/**
 * The sum over a fleet. An analyzer's bias is one error in all that it read, with its sign in each difference, and does not
 * shrink with the number of units; noise does. Where shares of low fire are unknown, their ranges add up, since whoever
 * guesses them wrongly does so everywhere.
 */
export function fleetSaving(rows: readonly SavingRow[]): FleetSaving {
  let [cost, counted, below, above] = [0, 0, 0, 0];
  const terms = rows.flatMap(({ saving, fuelUse, shareOfYear }) => {
    const scale = shareOfYear * fuelUse.energyKWh * fuelUse.pricePerKWh;
    if (!saving || !Number.isFinite((saving.savedPct + saving.sdPct) * scale)) return [];
    const { savedPct, lowerPct, upperPct, sdPct, parts } = saving;
    counted++;
    cost += (savedPct / 100) * scale;
    // What the unknown share of fires adds beyond the noise of the readings.
    below += Math.max(0, savedPct - lowerPct - Z90 * sdPct) * (scale / 100);
    above += Math.max(0, upperPct - savedPct - Z90 * sdPct) * (scale / 100);
    return parts.flatMap((part) => weighted(part.terms, part.weight * scale));
  });
  const half = Z90 * combinedSd(terms);
  return { cost, lower: cost - half - below, upper: cost + half + above, rows: counted };
}
