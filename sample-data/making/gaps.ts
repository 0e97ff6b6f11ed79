import { PLANTS } from './plants.ts';
import { type Chance, chanceFrom } from './random.ts';
import type { Reading } from './reading.ts';

const NOTES = [
  'cleaned condensate trap',
  'flame steady',
  'room warm, door open',
  'sight glass cleaned',
  'filter, intake screen brushed',
  'short high fire, little load',
  'printer out of paper; typed from display',
];

/** What nobody wrote down. A visit keeps its own luck, so that all rows of it may lack the same thing. */
export function withGaps(readings: readonly Reading[]): readonly Reading[] {
  return readings.flatMap((reading) => {
    const visit = chanceFrom(`gaps of visit ${reading.visit.id}`);
    const row = chanceFrom(`gaps of row ${reading.visit.id} ${reading.fuel} ${reading.fire} ${reading.state}`);
    // The two units with a planted CO keep their states: a CO is told open or closed by them.
    const kept = [PLANTS.openCo.unit, PLANTS.closedCo.unit].some((unit) => unit === reading.unit);
    const noStates = visit.chance(0.05) && !kept;
    const noLeft = visit.chance(0.1) && !noStates && !kept;
    if (reading.visit.crew !== 'house' && reading.state === 'as_left' && noLeft) return [];
    // Some only keep the last printout and do not say which it is.
    if (noStates && reading.state !== 'as_left') return [];
    return [forget(reading, noStates, visit, row)];
  });
}

function forget(reading: Reading, noStates: boolean, visit: Chance, row: Chance): Reading {
  const noAir = visit.chance(0.06);
  const noStatic = visit.chance(0.22);
  const noAdjusted = visit.chance(0.25);
  const noBarometer = visit.chance(0.5) || reading.visit.crew !== 'one';
  const first = reading.state === 'as_found' && reading.fire !== 'low';
  return {
    ...reading,
    state: noStates ? '' : reading.state,
    adjusted: noStates || noAdjusted ? '' : reading.adjusted,
    airC: noAir ? Number.NaN : reading.airC,
    // Static is read once, before the burner runs.
    staticInwc: noStatic || !(first || noStates) ? Number.NaN : reading.staticInwc,
    runningInwc: row.chance(0.05) ? Number.NaN : reading.runningInwc,
    co2: row.chance(0.04) ? Number.NaN : reading.co2,
    returnC: reading.visit.crew === 'one' && visit.chance(0.6) ? reading.returnC : Number.NaN,
    barometerKPa: noBarometer ? Number.NaN : reading.barometerKPa,
    returned: row.chance(0.5) ? reading.returned : '',
    visit: visit.chance(0.04) ? { ...reading.visit, analyzer: '' } : reading.visit,
    note: row.chance(0.06) ? (NOTES[row.whole(0, NOTES.length - 1)] ?? '') : '',
  };
}
