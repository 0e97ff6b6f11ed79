import { describe, expect, test } from 'vitest';
import { fitSupply } from '../../../shared/foresight/fit-supply.ts';
import { judgeSupply, type SupplyRow } from '../../../shared/foresight/judge-supply.ts';
import { readSupply, type UnitSupply } from '../../../shared/foresight/supply-readings.ts';
import { type TableRecord, tableOfRecords } from '../../../shared/foresight/table-of-records.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { derivedSchema } from '../../../shared/schemas/derived.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { supplyLimitsSchema, unitsSchema } from '../../../shared/schemas/register.ts';

const AS_OF = readIsoDate('2026-03-31');
const OPTIONS = { horizonDays: 365, lookAheadYears: 3, falseDiscoveryRate: 0.05 };
const yearly = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => readIsoDate(`${2026 - count + i}-10-01`));

const unit = (name: string, drop: readonly number[], fixed = 2000): UnitSupply => ({
  unit: name,
  days: yearly(drop.length),
  drop,
  fixed: drop.map(() => fixed),
  running: drop.map((value) => fixed - value),
  lastFixed: fixed,
  lastRunning: fixed - (drop.at(-1) ?? Number.NaN),
  normalized: 0,
});

function judge(units: readonly UnitSupply[], limits: readonly TableRecord[] = []): SupplyRow[] {
  const table = tableOfRecords(supplyLimitsSchema, limits);
  return judgeSupply(units, fitSupply(units, new Map(), 1), table, AS_OF, OPTIONS);
}

/** Ten units that stand still, so that the fleet knows what standing still looks like. */
const STEADY = Array.from({ length: 10 }, (_, i) =>
  unit(
    `S-${i}`,
    [100, 103, 98, 101, 99, 102, 100].map((v, k) => v + ((i * 7 + k * 3) % 5)),
  ),
);

describe('verdicts on the drop', () => {
  test('9.9 in. w.c. static allows 8.9 running (common practice, no source): the limit is 1 in. w.c.', () => {
    const [row] = judge([unit('A', [80, 82, 81], 9.9 * 249.08891)]);
    expect(row.limit).toBeCloseTo(249.08891, 5);
    expect(row.limitSource).toBe('low_pressure_rule');
    expect(row.verdict).toBe('within');
  });

  test('growing toward the limit, over it, and neither', () => {
    const rows = judge([...STEADY, unit('G', [120, 138, 152, 171, 189, 204, 222]), unit('O', [300, 303, 299, 301])]);
    const verdict = (name: string): string => rows.find((row) => row.unit === name)?.verdict ?? '';
    expect(verdict('G')).toBe('growing');
    expect(verdict('O')).toBe('over');
    expect(rows.filter((row) => row.verdict === 'within')).toHaveLength(10);
  });

  test('a drop that stood still for years and grows since is found, by what was read since', () => {
    // 100 Pa until 2023, then 30 Pa a year, within the few pascals to which a manometer repeats.
    const late = unit('L', [101, 98, 100, 103, 99, 101, 131, 158, 191]);
    const row = judge([...STEADY, late]).find(({ unit: name }) => name === 'L');
    expect(row?.verdict).toBe('growing');
    expect(row?.state.rate).toBeGreaterThan(25);
    expect(row?.state.rate).toBeLessThan(35);
  });

  test('behind high-pressure service the rule of thumb is no limit: unknown without the register’s', () => {
    const high = [2000, 2050, 2100, 2150].map((value) => value);
    const [unknown] = judge([unit('H', high, 35_000)]);
    expect(unknown.verdict).toBe('unknown');
    expect(unknown.reason).toMatch(/limit/);
    const [known] = judge([unit('H', high, 35_000)], [{ unit: 'H', drop_limit_Pa: 5000 }]);
    expect(known.limitSource).toBe('register');
    expect(known.verdict).not.toBe('unknown');
  });

  test('no pressures, and a single one', () => {
    const [none, one] = judge([unit('N', []), unit('E', [120])]);
    expect(none).toMatchObject({ verdict: 'unknown', used: 0 });
    expect(none.dropNow).toBeNaN();
    expect(one).toMatchObject({ verdict: 'unknown', used: 1 });
    expect(one.reason).toMatch(/single reading/);
  });
});

test('the drop is brought to the rated input: half the input, a drop (1/2)^-1.85 as large', () => {
  const on = readIsoDate('2025-10-01');
  const rows = [
    {
      unit: 'U',
      taken_at: on,
      fire: 'high',
      state: 'as_found',
      supply_static_Pa: 2000,
      supply_running_Pa: 1950,
      heat_input_clocked_kW: 100,
    },
  ];
  const readings = tableOfRecords(readingsSchema, rows);
  const derived = tableOfRecords(derivedSchema, [
    { unit: 'U', taken_at: on, fire: 'high', state: 'as_found', supply_drop_Pa: 50 },
  ]);
  const units = tableOfRecords(unitsSchema, [{ unit: 'U', heat_input_high_kW: 200 }]);
  const [read] = readSupply({ readings, derived, units }, AS_OF, 1.85);
  expect(read.drop[0]).toBeCloseTo(50 * 2 ** 1.85, 9);
  expect(read.normalized).toBe(1);
});

describe('found and left of one visit', () => {
  const on = readIsoDate('2025-10-01');
  const read = (rows: readonly { state: string; running: number }[]): UnitSupply => {
    const records = rows.map(({ state, running }) => ({
      unit: 'U',
      taken_at: on,
      fire: 'high',
      state,
      supply_static_Pa: 2466,
      supply_running_Pa: running,
      supply_drop_Pa: 2466 - running,
    }));
    const readings = tableOfRecords(
      readingsSchema,
      records.map(({ supply_drop_Pa: _, ...rest }) => rest),
    );
    const derived = tableOfRecords(
      derivedSchema,
      records.map(({ supply_static_Pa: _s, supply_running_Pa: _r, ...rest }) => rest),
    );
    return readSupply({ readings, derived, units: undefined }, AS_OF, 1.85)[0];
  };

  test('a supply put right at the visit is told as it was left, and the last pressures are ones that were read', () => {
    const { drop, lastFixed, lastRunning } = read([
      { state: 'as_left', running: 2217 },
      { state: 'as_found', running: 2117 },
      { state: 'trial', running: 2000 },
    ]);
    expect(drop).toEqual([249]);
    expect([lastFixed, lastRunning]).toEqual([2466, 2217]);
  });

  test('two readings of one drop are averaged; a trial counts only where there is nothing else', () => {
    expect(
      read([
        { state: 'as_found', running: 2210 },
        { state: 'as_left', running: 2218 },
      ]).drop,
    ).toEqual([252]);
    expect(read([{ state: 'trial', running: 2166 }]).drop).toEqual([300]);
  });
});
