import { calendar } from './making/calendar.ts';
import { CAMPUS } from './making/campus.ts';
import { canonicalExport, canonicalRow } from './making/canonical-export.ts';
import { withCoPlants } from './making/co-plants.ts';
import { commaExport, commaRow } from './making/comma-export.ts';
import { withCanonicalFaults, withCommaFaults } from './making/faults.ts';
import { withGaps } from './making/gaps.ts';
import { lifeOf } from './making/life.ts';
import { eventsFile, fuelUseFile } from './making/other-files.ts';
import { printExport } from './making/print-export.ts';
import type { Reading } from './making/reading.ts';
import { registerFile } from './making/register-file.ts';

/** Spring 2024 was printed from memory and never typed in. */
const isPrinted = ({ visit: { day, crew, reason } }: Reading): boolean =>
  crew !== 'house' && reason === 'seasonal' && calendar.year(day) === 2024;

/** Crew two also typed in the last visits of crew one to two buildings that it took over. */
const isInBoth = ({ unit, visit: { day, crew } }: Reading): boolean =>
  crew === 'one' && calendar.year(day) === 2019 && day > calendar.day('2019-07-01') && /^(GUL|HUT)/.test(unit);

/** What crew two copied from crew one's sheets carries crew one's printed efficiency. */
const copied = (reading: Reading): Reading =>
  isInBoth(reading) ? { ...reading, efficiencyNet: reading.efficiencyGross } : reading;

const byTime = (a: Reading, b: Reading): number => a.visit.day - b.visit.day || a.minute - b.minute;

/** Makes every file of the sample campus, by name. Same bytes every time. */
export function makeSample(): ReadonlyMap<string, Uint8Array> {
  const readings = withGaps(withCoPlants(CAMPUS.flatMap((unit) => lifeOf(unit).readings))).toSorted(byTime);
  const typed = readings.filter((reading) => !isPrinted(reading));
  const crewOne = typed.filter(({ visit: { crew } }) => crew !== 'two');
  const crewTwo = typed.filter((reading) => reading.visit.crew === 'two' || isInBoth(reading));
  const text = (content: string): Uint8Array => new TextEncoder().encode(content);
  return new Map([
    ['register.csv', text(registerFile())],
    ['events.csv', text(eventsFile())],
    ['fuel-use.csv', text(fuelUseFile())],
    ['readings-crew-one.csv', text(canonicalExport(withCanonicalFaults(crewOne.map(canonicalRow))))],
    ['readings-crew-two.csv', text(commaExport(withCommaFaults(crewTwo.map(copied).map(commaRow))))],
    ['prints-spring-2024.txt', printExport(readings.filter(isPrinted))],
  ]);
}
