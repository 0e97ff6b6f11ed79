/**
 * The density exponent estimated from fleets whose exponent is known, since they are simulated here: units set at different
 * O2, air between -10 and 32 °C, drift, noise of reading, now and then an adjustment that nobody wrote down.
 */
import { describe, expect, test } from 'vitest';
import { writeIsoDate } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import { deriveReadings, type Row } from './derive-readings.ts';

/** k of natural gas, dry flue over air; only lambda's ratios count. */
const K = 0.897;

function generator(seed: number): { uniform: () => number; normal: () => number } {
  let state = seed;
  const uniform = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return { uniform, normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()) };
}

interface Plan {
  readonly units: number;
  readonly visits: number;
  readonly exponent: number;
  readonly burner: Row;
  readonly seed: number;
  /** Half the swing of the air over the year, K. */
  readonly swingC?: number;
}

function simulate({ units, visits, exponent, burner, seed, swingC = 18 }: Plan): { rows: Row[]; register: Row[] } {
  const { uniform, normal } = generator(seed);
  const rows: Row[] = [];
  const register = Array.from({ length: units }, (_, i): Row => ({ unit: `S-${i}`, fuel: 'natural_gas', ...burner }));
  for (let i = 0; i < units; i++) {
    let atReference = 1.2 + 0.15 * uniform();
    const drift = 0.008 * normal() + 0.006;
    let day = 18_000 + Math.floor(365 * uniform());
    for (let visit = 0; visit < visits; visit++) {
      const air = 11 + swingC * Math.sin((2 * Math.PI * day) / 365.25) + Math.min(3, swingC / 6) * normal();
      const factor = ((air + 273.15) / 293.15) ** exponent;
      const read = (lambda: number): number => (20.95 * (lambda - 1)) / (lambda - 1 + K) + 0.1 * normal();
      const common = { unit: `S-${i}`, taken_at: writeIsoDate(day), fire: 'high', air_C: air + normal() };
      rows.push({ ...common, state: 'as_found', o2_pct: read(atReference / factor) });
      atReference = 1.2 + 0.15 * uniform();
      rows.push({ ...common, state: 'as_left', o2_pct: read(atReference / factor) });
      const days = 120 + Math.floor(300 * uniform());
      atReference *= 1 + (drift * days) / 365 + (uniform() < 0.04 ? 0.1 * normal() : 0);
      day += days;
    }
  }
  return { rows, register };
}

async function estimate(plan: Plan, parameters: unknown = {}) {
  const { rows, register } = simulate(plan);
  const result = await deriveReadings(rows, { units: register, parameters });
  const { exponents } = result.tables;
  const at = (name: string, behavior: string): number => {
    const row = Array.from({ length: exponents.rows }, (_, i) => i).find(
      (i) => textAt(textsOf(exponents, 'behavior'), i) === behavior,
    ) as number;
    return numbersOf(exponents, name)[row];
  };
  return { result, at };
}

const POWER = { burner: 'power', fuel_air_control: 'linkage' };
const PREMIX = { burner: 'premix', fuel_air_control: 'pneumatic' };

describe('a fleet of known exponent', () => {
  test.each([
    ['fixed_volume', POWER, 1],
    ['fixed_volume', POWER, 0.7],
    ['pneumatic', PREMIX, 0.5],
    ['trim', { ...POWER, trim: 'yes' }, 0],
    ['atmospheric', { burner: 'atmospheric' }, 0.4],
  ] as const)('%s: %j with exponent %s is found again, and inside the interval', async (behavior, burner, exponent) => {
    const { at } = await estimate({ units: 80, visits: 7, exponent, burner, seed: 7 });
    expect(at('fleet_lower', behavior)).toBeLessThan(exponent);
    expect(at('fleet_upper', behavior)).toBeGreaterThan(exponent);
    expect(at('fleet_upper', behavior) - at('fleet_lower', behavior)).toBeLessThan(0.25);
  });

  test('the interval of 95 % holds the truth in 33 or more of 40 fleets (fewer than 1 in 1000 if it were a fair 95 %)', async () => {
    let held = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const { at } = await estimate({ units: 24, visits: 6, exponent: 0.8, burner: POWER, seed: 1000 + seed });
      if (at('fleet_lower', 'fixed_volume') <= 0.8 && at('fleet_upper', 'fixed_volume') >= 0.8) held++;
    }
    expect(held).toBeGreaterThanOrEqual(33);
  });
});

describe('what is used', () => {
  const plan: Plan = { units: 60, visits: 7, exponent: 0.6, burner: POWER, seed: 3 };
  const used = 'temperature_exponent';

  test('the table, with a remark where the fleet contradicts it', async () => {
    const { result, at } = await estimate(plan);
    expect(at(used, 'fixed_volume')).toBe(1);
    expect(result.remarks.map(({ text }) => text).join(' ')).toMatch(
      /fan of fixed volume at 0\.\d\d \(0\.\d\d to 0\.\d\d/,
    );
  });

  test('the fleet where it is asked: readings at reference air follow its exponent', async () => {
    const { result, at } = await estimate(plan, { exponentSource: 'fleet' });
    expect(at(used, 'fixed_volume')).toBeCloseTo(at('fleet_exponent', 'fixed_volume'), 12);
    const byTable = await estimate(plan, {
      exponents: {
        ...(await defaults()),
        fixed_volume: {
          temperature: at(used, 'fixed_volume'),
          pressure: 1,
          temperatureSd: at('temperature_exponent_sd', 'fixed_volume'),
          seasonSd: 0,
        },
      },
    });
    for (const name of ['o2_reference_pct', 'o2_reference_pct_sd'])
      expect(numbersOf(result.tables.derived, name)).toEqual(numbersOf(byTable.result.tables.derived, name));
  });

  test('too few readings, or air that hardly moved: the default stays, and a remark says why', async () => {
    const few = await estimate({ ...plan, units: 5 }, { exponentSource: 'fleet' });
    expect(few.at(used, 'fixed_volume')).toBe(1);
    expect(few.result.remarks.map(({ text }) => text).join(' ')).toContain('too few to estimate it');
    const narrow = await estimate({ ...plan, units: 30, visits: 3, swingC: 0 }, { exponentSource: 'fleet' });
    expect(narrow.at(used, 'fixed_volume')).toBe(1);
    expect(narrow.result.remarks.map(({ text }) => text).join(' ')).toContain('changed too little');
  });

  test('a fleet of unknown burners that has an exponent of its own loses the flag of the season', async () => {
    const { result, at } = await estimate({ ...plan, burner: {}, seed: 9 }, { exponentSource: 'fleet' });
    expect(at(used, 'unknown')).toBeGreaterThan(0.45);
    expect(textsOf(result.tables.derived, 'flags').levels.join(' ')).not.toContain('season_not_removed');
  });
});

async function defaults(): Promise<Readonly<Record<string, unknown>>> {
  const { DENSITY_EXPONENTS } = await import('../../../shared/combustion/density-exponents.ts');
  return DENSITY_EXPONENTS;
}
