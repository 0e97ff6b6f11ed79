import { calendar } from './calendar.ts';
import { chanceFrom } from './random.ts';
import type { UnitPlan } from './unit-plan.ts';

/** One visit to one unit. Crew one writes the canonical export, crew two the one with commas, the house crew only checks and never turns a screw. */
export interface Visit {
  readonly id: string;
  readonly day: number;
  readonly minute: number;
  readonly crew: 'one' | 'two' | 'house';
  readonly technician: string;
  readonly analyzer: string;
  readonly reason: 'scheduled' | 'seasonal' | 'callback' | 'commissioning';
}

const TECHNICIANS = { one: ['JQ', 'VW'], two: ['UX', 'YB'], house: ['OZ'] } as const;
const ANALYZERS = { one: ['An-203', 'An-217'], two: ['An-305', 'An-311'], house: ['An-342'] } as const;
const AS_OF = calendar.day('2026-11-15');

/** North was crew one's but for 2021 to 2023; South was crew one's until the end of 2019, then crew two's. */
function crewOf(unit: UnitPlan, year: number): 'one' | 'two' {
  if (unit.site === 'North') return year >= 2021 && year <= 2023 ? 'two' : 'one';
  return year <= 2019 ? 'one' : 'two';
}

/** The order of a unit in its building, so that a crew does one building on one or two days. */
const number = (unit: UnitPlan): number => Number(unit.unit.slice(-1));

function visit(unit: UnitPlan, wanted: Pick<Visit, 'day' | 'crew' | 'reason'>): Visit {
  const chance = chanceFrom(`visit ${unit.building} ${wanted.day} ${wanted.crew}`);
  const pair = chance.chance(0.5) ? 0 : 1;
  const swapped = chance.chance(0.2) ? 1 - pair : pair;
  const names = TECHNICIANS[wanted.crew];
  const instruments = ANALYZERS[wanted.crew];
  return {
    ...wanted,
    id: `${calendar.iso(wanted.day).slice(2).replaceAll('-', '')}-${unit.unit.replace('-', '')}`,
    minute: 450 + number(unit) * 75 + chance.whole(0, 40),
    technician: names[pair % names.length] ?? names[0],
    analyzer: instruments[swapped % instruments.length] ?? instruments[0],
  };
}

/** The days on which a crew works in a building: autumn tuning every year, spring for steam and now and then for outside air, house checks from 2021. */
export function visitsOf(unit: UnitPlan): readonly Visit[] {
  const visits: Visit[] = [];
  for (let year = 2016; year <= 2026; year++) {
    const building = chanceFrom(`round ${unit.building} ${year}`);
    const own = chanceFrom(`round ${unit.unit} ${year}`);
    const autumn = calendar.day(`${year}-08-24`) + building.whole(0, 70) + Math.floor((number(unit) - 1) / 2);
    const spring = calendar.day(`${year}-03-20`) + building.whole(0, 45);
    const twice = unit.visitsPerYear === 2 || (unit.air === 'outside' && own.chance(0.2));
    if (twice && year > 2016) visits.push(visit(unit, { day: spring, crew: crewOf(unit, year), reason: 'seasonal' }));
    const checkDay = calendar.day(`${year}-02-10`) + building.whole(0, 30);
    if (year >= 2021 && (number(unit) + year) % 3 === 0)
      visits.push(visit(unit, { day: checkDay, crew: 'house', reason: 'seasonal' }));
    const skipped = own.chance(0.08) && year < 2025 && year > 2016;
    if (!skipped && autumn <= AS_OF)
      visits.push(visit(unit, { day: autumn, crew: crewOf(unit, year), reason: 'scheduled' }));
  }
  return visits
    .filter(({ day }) => day >= calendar.day('2016-11-15') - 80 && day <= AS_OF)
    .sort((a, b) => a.day - b.day);
}
