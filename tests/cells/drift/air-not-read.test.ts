import { expect, test } from 'vitest';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Session } from '../../../src/notebook/session.ts';
import { reviewFleet } from '../../verify/written-fleet.ts';

const UNITS = Array.from({ length: 16 }, (_, i) => `B-${String(i + 1).padStart(2, '0')}`);
const YEARS = 9;
// What an instrument shows strays a little from year to year.
const STRAYS = [0, 0.1, -0.1, 0, 0.1, 0, -0.1, 0.1, 0];

/** Every unit is read at 4.5 % O2 year after year, a fifth of a point above its band. */
const review = (airC: string): Promise<Session> =>
  reviewFleet({
    readings: [
      'unit,taken_at,fire,state,adjusted,o2_pct,air_C,analyzer',
      ...UNITS.flatMap((unit, u) =>
        STRAYS.map((stray, year) =>
          [
            unit,
            `${2017 + year}-03-1${u % 9}`,
            'high',
            'as_found',
            'no',
            (4.5 + STRAYS[(u + year) % YEARS] / 2 + stray / 2).toFixed(1),
            airC,
            `A-${(u + year) % 3}`,
          ].join(','),
        ),
      ),
    ].join('\n'),
    register: [
      'unit,fuel,burner,fuel_air_control,air_source,o2_high_target_pct,o2_high_lower_pct,o2_high_upper_pct',
      ...UNITS.map((unit) => `${unit},natural_gas,power,linkage,outside,3.8,3.2,4.3`),
    ].join('\n'),
    truth: [],
    asOf: readIsoDate('2025-06-01'),
  });

/** The chances with which lanes are called outside now. */
const outside = (session: Session): number[] => {
  const raised = session.result('raise')?.tables['raised'];
  if (!raised) throw new Error('no list');
  const [reason, chance] = [textsOf(raised, 'reason'), numbersOf(raised, 'probability')];
  return [...chance].filter((_, row) => textAt(reason, row) === 'out_of_tolerance');
};

const levelSds = (session: Session): number[] => {
  const drift = session.result('drift')?.tables['drift'];
  if (!drift) throw new Error('no drift');
  return [...numbersOf(drift, 'level_now_sd')];
};

const told = (session: Session): string =>
  session
    .state('drift')
    ?.description?.remarks.map(({ text }) => text)
    .join(' ') ?? '';

test('air that was read: a fifth of a point above the band is told', async () => {
  const session = await review('20');
  const chances = outside(session);
  expect(chances.length).toBeGreaterThan(12);
  expect(Math.min(...chances)).toBeGreaterThan(0.9);
  expect(told(session)).not.toContain('was not read');
});

test('air that nobody read may be what moves all readings: the level stays vague, and so does what is said of it', async () => {
  const session = await review('');
  // 8 K of 293 K is 2.73 % of lambda (fan law); at 4.5 % O2 of natural gas (dry ratio 0.898) lambda is 1.246 and dO2/d ln(lambda)
  // is 1.246 x 20.95 x 0.898 / 1.144^2 = 17.9 points: 0.49 points of O2.
  for (const sd of levelSds(session)) {
    expect(sd).toBeGreaterThan(0.47);
    expect(sd).toBeLessThan(0.6);
  }
  // 0.2 points above the edge is 0.41 of 0.49: the normal's 0.66, and with what the readings themselves leave open less.
  for (const chance of outside(session)) {
    expect(chance).toBeGreaterThan(0.6);
    expect(chance).toBeLessThan(0.69);
  }
  expect(told(session)).toContain('The air temperature of 16 lanes was not read');
});
