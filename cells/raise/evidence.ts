import type { CellContext, CellResult, Inputs, Read } from '../../shared/cell.ts';
import { type Outcome, succeed } from '../../shared/outcome.ts';
import { readIfThere } from '../../shared/sentence/read-if-there.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import type { Finding } from './finding.ts';
import { findDoubtful } from './findings/find-data.ts';
import { findNotReturned } from './findings/find-service.ts';
import { testSigns } from './findings/find-signs.ts';
import { findSupplyOverMaximum } from './findings/find-supply.ts';
import { type FleetMonth, fleetMonths, monthOf } from './findings/fleet-months.ts';
import type { Sign } from './findings/sign.ts';
import { type Fleet, type FleetReadings, fleetOf, restingOf } from './fleet.ts';
import type { RaiseParameters } from './parameters.ts';

interface Found {
  readonly readings: FleetReadings;
  readonly months: readonly FleetMonth[];
  /** Tests of each sort of sign. */
  readonly tests: readonly (readonly Sign[])[];
  /** Measured facts that no parameter bears on; retired units included. */
  readonly facts: readonly Finding[];
  readonly doubtful: readonly Finding[];
}

/**
 * What the readings say of themselves, before any limit or chance is asked for. Handed on as a function, which is only ever
 * equal to itself: it is made anew only where the readings are others, so that there is nothing to compare.
 */
export interface Evidence extends CellResult {
  readonly found: () => Found;
}

type Cells = Pick<RaiseParameters, 'readings' | 'register' | 'events' | 'derive' | 'drift' | 'instruments'>;

export const evidenceCells = ({ readings, register, events, derive, drift, instruments }: RaiseParameters): Cells => ({
  readings,
  register,
  events,
  derive,
  drift,
  instruments,
});

export const evidenceReads = ({ readings, register, events, derive, drift, instruments }: RaiseParameters): Read[] => [
  ...readOf(readings, 'accepted'),
  ...readOf(register, 'units', 'supply-limits'),
  ...readIfThere(events, 'events'),
  ...readIfThere(derive, 'derived'),
  ...readIfThere(drift, 'points'),
  ...readIfThere(instruments, 'instruments'),
];

export async function gatherEvidence(
  parameters: RaiseParameters,
  inputs: Inputs,
  context: CellContext,
): Promise<Outcome<Evidence>> {
  const fleet = fleetOf(parameters, inputs, context.asOf);
  const resting = restingOf(fleet);
  const skip = (unit: string): boolean => resting(unit) !== '';
  await context.pause();
  const facts = [...findSupplyOverMaximum(fleet), ...findNotReturned(fleet)];
  await context.pause();
  const doubtful = findDoubtful(fleet, skip);
  await context.pause();
  const months = monthsOf(fleet);
  await context.pause();
  const tests = await testSigns(fleet, skip, () => context.pause());
  const found = { readings: fleet.readings, months, tests, facts, doubtful };
  return succeed({ tables: {}, found: () => found });
}

/** Months in which the fleet moved as one, where drift's points are there and more than one analyzer was at work. */
function monthsOf({ points, readings }: Fleet): FleetMonth[] {
  if (!points) return [];
  const analyzer = readings.text('analyzer');
  // Asked for the few months that stand out, so that not every reading is looked at for each.
  const analyzersIn = (month: string): number => {
    const used = new Set<string>();
    for (let row = 0; row < readings.day.length; row++)
      if (monthOf(readings.day[row]) === month) used.add(analyzer(row));
    used.delete('');
    return used.size;
  };
  return fleetMonths(points, analyzersIn);
}
