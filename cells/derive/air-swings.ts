import type { AirSwing } from '../../shared/combustion/fleet-exponent.ts';
import { DAYS_PER_YEAR } from '../../shared/quantities/dates.ts';
import { ln } from '../../shared/quantities/elementary.ts';
import { numbersOf, textsOf } from '../../shared/table/columns.ts';
import type { Table, TextColumn } from '../../shared/table/table.ts';
import type { RegisterRows } from './register-rows.ts';
import type { ResolvedRows } from './resolve-fuels.ts';

const KELVIN = 273.15;
/** Two readings of one visit are no swing of the weather. */
const LEAST_DAYS = 5;

/**
 * Swings by behavior of the burner: from a reading as left (or of a burner said not to be adjusted) to the next as found of
 * the same unit, fuel and fire. Only air temperatures that were read count; rows come oldest first within a unit.
 */
export function airSwings(
  readings: Table,
  { fuel, registerRow }: ResolvedRows,
  { behaviors }: RegisterRows,
  lambda: Float64Array,
): ReadonlyMap<string, readonly AirSwing[]> {
  const [unit, fire, state, adjusted] = ['unit', 'fire', 'state', 'adjusted'].map((name) => textsOf(readings, name));
  const [taken, air] = ['taken_at', 'air_C'].map((name) => numbersOf(readings, name));
  const [found, left, no] = [codeOf(state, 'as_found'), codeOf(state, 'as_left'), codeOf(adjusted, 'no')];
  const fuels = fuel.levels.length + 1;
  const fires = fire.levels.length + 1;
  const settled = new Map<number, number>();
  const swings = new Map<string, AirSwing[]>();
  for (let row = 0; row < readings.rows; row++) {
    const [isFound, isLeft] = [state.codes[row] === found, state.codes[row] === left];
    if (!isFound && !isLeft) continue;
    const lane = ((unit.codes[row] + 1) * fires + fire.codes[row] + 1) * fuels + fuel.codes[row] + 1;
    const before = settled.get(lane);
    if (isFound && before !== undefined && taken[row] - taken[before] >= LEAST_DAYS) {
      const swing = {
        unit: unit.codes[row],
        lambda: ln(lambda[row] / lambda[before]),
        density: ln((air[before] + KELVIN) / (air[row] + KELVIN)),
        years: (taken[row] - taken[before]) / DAYS_PER_YEAR,
      };
      const behavior = registerRow[row] < 0 ? 'unknown' : behaviors[registerRow[row]];
      if (Number.isFinite(swing.lambda + swing.density)) put(swings, behavior, swing);
    }
    if (isLeft || adjusted.codes[row] === no) settled.set(lane, row);
    else settled.delete(lane);
  }
  return swings;
}

const codeOf = ({ levels }: TextColumn, text: string): number => {
  const code = levels.indexOf(text);
  return code < 0 ? -2 : code;
};

function put(swings: Map<string, AirSwing[]>, behavior: string, swing: AirSwing): void {
  const known = swings.get(behavior);
  if (known) known.push(swing);
  else swings.set(behavior, [swing]);
}
