import { co2FromO2 } from '../../shared/combustion/flue-gas.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { TunedVisit } from './last-visits.ts';
import type { FireHeat } from './saving-of-visit.ts';

/** Nothing is said beyond this: other visits will have come. */
const LONGEST_YEARS = 5;

/**
 * Years until drift at the fitted rate has carried the fire that was moved most from where it was left back to where it
 * was found: as long as that lasts the saving, shrinking, does. NaN where no drift is known.
 */
export function persistenceOf(
  drift: Table | undefined,
): (visit: TunedVisit, fires: readonly FireHeat[], properties: FuelProperties) => number {
  const slopes = new Map<string, { slope: number; quantity: string }>();
  if (drift) {
    const [unit, fuel, fire, quantity] = ['unit', 'fuel', 'fire', 'quantity'].map((name) => textsOf(drift, name));
    const slope = numbersOf(drift, 'slope_per_year');
    for (let row = 0; row < drift.rows; row++)
      slopes.set([unit, fuel, fire].map((column) => textAt(column, row)).join('\u0000'), {
        slope: slope[row],
        quantity: textAt(quantity, row),
      });
  }
  return ({ unit, fuel }, fires, properties) => {
    const moved = ({ foundO2Pct, leftO2Pct }: FireHeat): number => Math.abs(foundO2Pct - leftO2Pct);
    const main = fires.reduce((most, fire) => (moved(fire) > moved(most) ? fire : most));
    const known = slopes.get([unit, fuel, main.fire].join('\u0000'));
    if (!known || !Number.isFinite(known.slope)) return Number.NaN;
    const [found, left] = [main.foundO2Pct, main.leftO2Pct].map((o2) =>
      known.quantity === 'o2_pct' ? o2 : co2FromO2(o2, properties),
    );
    const gap = found - left;
    if (!Number.isFinite(gap)) return Number.NaN;
    return gap * known.slope > 0 ? Math.min(gap / known.slope, LONGEST_YEARS) : LONGEST_YEARS;
  };
}
