import { probabilityOutside } from '../../shared/limits/probability-outside.ts';
import { checkRich, richInSummer } from '../../shared/messages/raise.ts';
import { writeDay } from '../../shared/quantities/dates.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Finding } from './finding.ts';
import type { Fleet } from './fleet.ts';
import type { RaiseParameters } from './parameters.ts';

const OXYGEN_IN_AIR_PCT = 20.95;
const REFERENCE_AIR_C = 20;
/** A boiler room sees about a quarter of the weather's swing (common practice, no source). */
const ROOM_SHARE = 0.25;
/** How lambda follows the density of the combustion air; burners that are not here are not projected. */
const DENSITY_EXPONENT: Readonly<Record<string, number>> = { power: 1, premix: 0.5 };

/**
 * Burners tuned in cool air that the hottest days would make rich: the last O2 of each fire, at reference air, carried to
 * the summer's air density. Only where burner and air source are known and no O2 trim holds it.
 */
export function findRichInSummer(
  fleet: Fleet,
  parameters: RaiseParameters,
  skip: (unit: string) => boolean,
): Finding[] {
  const { readings } = fleet;
  const [fuel, fire] = [readings.text('fuel'), readings.text('fire')];
  const o2 = readings.number('o2_reference_pct');
  const sd = readings.number('o2_reference_pct_sd');
  const findings: Finding[] = [];
  for (const [unit, hardware] of hardwareOf(fleet)) {
    if (skip(unit)) continue;
    const last = new Map<string, number>();
    for (const row of readings.byUnit.get(unit) ?? [])
      if (Number.isFinite(o2[row])) last.set(`${fuel(row)}\u0000${fire(row)}`, row);
    for (const row of last.values()) {
      const summer = summerO2(o2[row], hardware, parameters.summerAirC);
      const slope =
        summerO2(o2[row] + 0.05, hardware, parameters.summerAirC) -
        summerO2(o2[row] - 0.05, hardware, parameters.summerAirC);
      const chance = probabilityOutside(summer, (sd[row] * slope) / 0.1, parameters.richO2Pct, Number.NaN);
      if (!(chance >= parameters.leastChance)) continue;
      findings.push({
        unit,
        fuel: fuel(row),
        fire: fire(row),
        reason: 'rich_in_summer',
        probability: chance,
        byDate: Number.NaN,
        falseDiscoveryRate: Number.NaN,
        evidence: richInSummer({
          fire: fire(row),
          fuel: fuel(row),
          takenOn: writeDay(readings.day[row]),
          o2Pct: o2[row],
          summerO2Pct: summer,
          summerAirC: hardware.room
            ? REFERENCE_AIR_C + (parameters.summerAirC - REFERENCE_AIR_C) * ROOM_SHARE
            : parameters.summerAirC,
          richO2Pct: parameters.richO2Pct,
        }),
        checkFirst: checkRich(),
        readingsUsed: 1,
        urgency: parameters.richO2Pct - summer,
      });
    }
  }
  return findings;
}

interface Hardware {
  readonly exponent: number;
  readonly room: boolean;
}

function hardwareOf({ units }: Fleet): Map<string, Hardware> {
  const hardware = new Map<string, Hardware>();
  if (!units) return hardware;
  const [unit, burner, air, trim] = ['unit', 'burner', 'air_source', 'trim'].map((name) => textsOf(units, name));
  for (let row = 0; row < units.rows; row++) {
    const exponent = DENSITY_EXPONENT[textAt(burner, row)];
    const source = textAt(air, row);
    if (exponent === undefined || textAt(trim, row) === 'yes' || (source !== 'outside' && source !== 'room')) continue;
    hardware.set(textAt(unit, row), { exponent, room: source === 'room' });
  }
  return hardware;
}

/**
 * O2 on a hot day. Lambda goes with (density ratio)^exponent; the ratio of dry flue gas to air is taken as 0.9, which
 * moves the result by less than 0.02 points for any hydrocarbon gas or oil between 0 and 5 % O2. Down to no oxygen at all.
 */
function summerO2(o2Pct: number, { exponent, room }: Hardware, summerAirC: number): number {
  const dryRatio = 0.9;
  const airC = room ? REFERENCE_AIR_C + (summerAirC - REFERENCE_AIR_C) * ROOM_SHARE : summerAirC;
  const lambda = 1 + (dryRatio * o2Pct) / (OXYGEN_IN_AIR_PCT - o2Pct);
  const hot = lambda * ((REFERENCE_AIR_C + 273.15) / (airC + 273.15)) ** exponent;
  return hot <= 1 ? 0 : (OXYGEN_IN_AIR_PCT * (hot - 1)) / (hot - 1 + dryRatio);
}
