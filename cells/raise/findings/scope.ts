import { supplyMovesOxygen } from '../../../shared/limits/supply-verdicts.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Fleet } from '../fleet.ts';
import { type DriftLane, richness, type Scope } from './drift-lane.ts';
import type { FleetMonth } from './fleet-months.ts';

/** Attribution by scope, widest first: the fleet in a month, the analyzer, the gas supply, the unit (both fires alike), the one fire. */
export function scopeOf(
  fleet: Fleet,
  raised: readonly DriftLane[],
  months: readonly FleetMonth[],
): (lane: DriftLane) => Scope {
  const nameOf = (lane: DriftLane): string => `${lane.unit}\u0000${lane.fuel}\u0000${richness(lane)}`;
  const directions = new Map<string, Set<string>>();
  for (const lane of raised)
    directions.set(nameOf(lane), (directions.get(nameOf(lane)) ?? new Set<string>()).add(lane.fire));
  const supply = supplyState(fleet);
  const analyzer = lastAnalyzer(fleet);
  const control = controls(fleet);
  const inMonth = new Map(months.map(({ month, leanerO2 }) => [month, leanerO2]));
  return (lane) => ({
    fleetLeanerO2: inMonth.get(lane.lastVisitOn.slice(0, 7)) ?? Number.NaN,
    bothFires: (directions.get(nameOf(lane))?.size ?? 0) > 1,
    ...supply(lane.unit),
    ...analyzer(lane.unit, lane.fuel, lane.fire, lane.quantity),
    control: control(lane.unit),
  });
}

function supplyState({ supply }: Fleet): (unit: string) => Pick<Scope, 'supplyLow' | 'supplyRaised'> {
  const states = new Map<string, Pick<Scope, 'supplyLow' | 'supplyRaised'>>();
  if (supply) {
    const [unit, verdict] = [textsOf(supply, 'unit'), textsOf(supply, 'verdict')];
    const [running, minimum] = [numbersOf(supply, 'running_now_Pa'), numbersOf(supply, 'supply_min_Pa')];
    for (let row = 0; row < supply.rows; row++)
      states.set(textAt(unit, row), {
        supplyLow: supplyMovesOxygen(running[row], minimum[row]),
        supplyRaised: ['over', 'growing'].includes(textAt(verdict, row)),
      });
  }
  return (unit) => states.get(unit) ?? { supplyLow: false, supplyRaised: false };
}

type LastAnalyzer = Pick<Scope, 'analyzer' | 'analyzerBias' | 'analyzerReads'>;

/** The analyzer of the last reading of a lane, where it is known to read high or low everywhere, or confounded with its units. */
function lastAnalyzer({
  readings,
  instruments,
}: Fleet): (unit: string, fuel: string, fire: string, quantity: string) => LastAnalyzer {
  const none = { analyzer: '', analyzerBias: Number.NaN, analyzerReads: '' };
  if (!instruments) return () => none;
  const [name, verdict] = [textsOf(instruments, 'analyzer'), textsOf(instruments, 'verdict')];
  const told = new Map<string, number>();
  for (let row = 0; row < instruments.rows; row++)
    if (['biased', 'confounded'].includes(textAt(verdict, row))) told.set(textAt(name, row), row);
  if (told.size === 0) return () => none;
  const offSince = numbersOf(instruments, 'off_since');
  const [fuelAt, fireAt, analyzerAt] = ['fuel', 'fire', 'analyzer'].map((column) => readings.text(column));
  return (unit, fuel, fire, quantity) => {
    const last = (readings.byUnit.get(unit) ?? []).findLast((row) => fuelAt(row) === fuel && fireAt(row) === fire);
    const row = last === undefined ? undefined : told.get(analyzerAt(last));
    if (last === undefined || row === undefined || readings.day[last] < offSince[row]) return none;
    const analyzer = analyzerAt(last);
    if (textAt(verdict, row) === 'confounded') return { ...none, analyzer };
    const biasIn = (reads: string): LastAnalyzer => {
      const analyzerBias = numbersOf(instruments, reads === 'o2_pct' ? 'o2_bias_pct' : 'co2_bias_pct')[row];
      return { analyzer, analyzerBias, analyzerReads: reads };
    };
    // It may have measured one of the two only.
    const own = biasIn(quantity);
    return Number.isFinite(own.analyzerBias) ? own : biasIn(quantity === 'o2_pct' ? 'co2_pct' : 'o2_pct');
  };
}

function controls({ units }: Fleet): (unit: string) => string {
  const control = new Map<string, string>();
  if (units) {
    const [unit, kind] = [textsOf(units, 'unit'), textsOf(units, 'fuel_air_control')];
    for (let row = 0; row < units.rows; row++) control.set(textAt(unit, row), textAt(kind, row));
  }
  return (unit) => control.get(unit) ?? '';
}
