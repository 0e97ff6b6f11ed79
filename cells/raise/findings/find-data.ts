import { doubtWords } from '../../../shared/messages/doubts.ts';
import {
  checkDoubtful,
  checkNoData,
  neverRead,
  noData,
  onlyOtherFuels,
  onlyTrials,
  readingDoubtful,
  sourceOf,
} from '../../../shared/messages/raise.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Finding } from '../finding.ts';
import type { Fleet } from '../fleet.ts';
import type { RaiseParameters } from '../parameters.ts';

const DAYS_PER_MONTH = 365.25 / 12;
/** Events from which the time without a reading counts anew. */
const RESTARTS: readonly string[] = ['replaced', 'converted', 'recommissioned'];
const NOTHING = { probability: Number.NaN, byDate: Number.NaN, falseDiscoveryRate: Number.NaN } as const;

/** Units, fuel by fuel, that nobody has read for long. Due dates are another list. */
export function findNoData(fleet: Fleet, parameters: RaiseParameters, skip: (unit: string) => boolean): Finding[] {
  const interval = longestIntervals(fleet);
  const [fuelAt, stateAt] = ['fuel', 'state'].map((column) => fleet.readings.text(column));
  return expected(fleet).flatMap(({ unit, fuel, installed }) => {
    if (skip(unit)) return [];
    const all = fleet.readings.byUnit.get(unit) ?? [];
    const ofFuel = all.filter((row) => fuel === '' || fuelAt(row) === fuel);
    // A reading on the way from one setting to another says neither what was found nor what was left.
    const rows = ofFuel.filter((row) => stateAt(row) !== 'trial');
    const limit = Math.max(parameters.unseenMonths, interval.get(unit) ?? 0);
    const last = rows.reduce((latest, row) => Math.max(latest, fleet.readings.day[row]), Number.NEGATIVE_INFINITY);
    const restart = (fleet.events.get(unit) ?? [])
      .filter(({ day, event }) => day <= fleet.asOf && RESTARTS.includes(event))
      .reduce((latest, { day }) => Math.max(latest, day), installed);
    const months = (fleet.asOf - Math.max(last, restart)) / DAYS_PER_MONTH;
    if (!(months > limit)) return [];
    const known = Number.isFinite(last);
    return [
      {
        ...NOTHING,
        unit,
        fuel,
        fire: '',
        reason: 'no_data' as const,
        evidence: known
          ? noData(writeDay(last), (fleet.asOf - last) / DAYS_PER_MONTH, limit)
          : noneUsable(fuel, all.length, ofFuel.length, limit),
        checkFirst: checkNoData(),
        readingsUsed: rows.length,
        urgency: known ? months : Number.MAX_VALUE,
      },
    ];
  });
}

function noneUsable(fuel: string, all: number, ofFuel: number, limitMonths: number): string {
  if (ofFuel > 0) return onlyTrials(ofFuel, limitMonths);
  return all > 0 ? onlyOtherFuels(all, fuel, limitMonths) : neverRead(limitMonths);
}

interface Expected {
  readonly unit: string;
  readonly fuel: string;
  /** -Infinity where it is not known. */
  readonly installed: number;
}

/** Units and fuels that should have readings: those of the register, or without a register whatever was read. */
function expected({ units, readings }: Fleet): Expected[] {
  const found = new Map<string, Expected>();
  if (units) {
    const [unit, fuel] = [textsOf(units, 'unit'), textsOf(units, 'fuel')];
    const installed = numbersOf(units, 'installed_on');
    for (let row = 0; row < units.rows; row++) {
      const [name, burns] = [textAt(unit, row), textAt(fuel, row)];
      found.set(`${name}\u0000${burns}`, {
        unit: name,
        fuel: burns,
        installed: Number.isFinite(installed[row]) ? installed[row] : Number.NEGATIVE_INFINITY,
      });
    }
  }
  // With a register, an id that it lacks is a stray one, which the readings cell reports.
  for (const unit of units ? [] : readings.byUnit.keys())
    found.set(unit, { unit, fuel: '', installed: Number.NEGATIVE_INFINITY });
  return [...found.values()];
}

function longestIntervals({ planning }: Fleet): Map<string, number> {
  const intervals = new Map<string, number>();
  if (!planning) return intervals;
  const unit = textsOf(planning, 'unit');
  const months = numbersOf(planning, 'max_interval_months');
  for (let row = 0; row < planning.rows; row++)
    if (Number.isFinite(months[row])) intervals.set(textAt(unit, row), months[row]);
  return intervals;
}

/** Fires whose last reading contradicts itself, by the flags of what was derived from it. */
export function findDoubtful({ readings }: Fleet, skip: (unit: string) => boolean): Finding[] {
  if (!readings.derived.columns.has('flags')) return [];
  const [fuel, fire, flags, file] = ['fuel', 'fire', 'flags', 'source_file'].map((column) => readings.text(column));
  const line = readings.number('source_line');
  const findings: Finding[] = [];
  for (const unit of readings.byUnit.keys()) {
    if (skip(unit)) continue;
    for (const lane of readings.lanesOf(unit)) {
      const row = lane[lane.length - 1];
      const doubts = flags(row)
        .split(' ')
        .map(doubtWords)
        .filter((words) => words !== '');
      if (doubts.length === 0) continue;
      findings.push({
        ...NOTHING,
        unit,
        fuel: fuel(row),
        fire: fire(row),
        reason: 'reading_doubtful',
        evidence: readingDoubtful(
          fire(row),
          fuel(row),
          writeDay(readings.day[row]),
          doubts.join(', '),
          sourceOf(file(row), line[row]),
        ),
        checkFirst: checkDoubtful(),
        readingsUsed: 1,
        urgency: doubts.length,
      });
    }
  }
  return findings;
}
