import { describe, expect, test } from 'vitest';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';
import { reviewFleet } from '../../verify/written-fleet.ts';

const HEAD = 'unit,taken_at,fire,state,o2_pct,analyzer,supply_static_Pa,supply_running_Pa';
const REGISTER = 'unit,fuel,burner,o2_high_target_pct,o2_high_lower_pct,o2_high_upper_pct';
const PLATE = 'B-1,natural_gas,power,4,3.5,4.5';

const reading = (unit: string, on: string, o2: number, analyzer = 'A-1'): string =>
  `${unit},${on},high,as_found,${o2},${analyzer},2000,1850`;

/** Reviews the files as the command line would, and looks at every table that is written for a number that is none. */
async function review(rows: readonly string[], register = [PLATE]): Promise<Table> {
  const fleet = {
    readings: [HEAD, ...rows].join('\n'),
    register: [REGISTER, ...register].join('\n'),
    truth: [],
    asOf: readIsoDate('2026-03-31'),
  };
  const session = await reviewFleet(fleet);
  for (const { name, description } of session.states()) {
    const told = [description?.answer ?? '', ...(description?.remarks ?? []).map(({ text }) => text)];
    expect(told.join(' '), name).not.toMatch(/NaN|Infinity|undefined/);
    for (const table of Object.values(session.result(name)?.tables ?? {}))
      for (const column of table.columns.values())
        if (column.kind !== 'text')
          expect(column.values.some((value) => Math.abs(value) === Number.POSITIVE_INFINITY)).toBe(false);
  }
  const drift = session.result('drift')?.tables['drift'];
  if (!drift) throw new Error('no drift');
  return drift;
}

/** Known, or unknown with its reason; never neither. */
function expectVerdict(drift: Table): void {
  const reason = textsOf(drift, 'reason');
  numbersOf(drift, 'probability_out_by_horizon').forEach((chance, row) => {
    expect(Number.isFinite(chance)).toBe(textAt(reason, row) === '');
  });
}

const years = (unit: string, values: readonly number[], analyzer?: string): string[] =>
  values.map((o2, i) => reading(unit, `${2026 - values.length + i}-02-01`, o2, analyzer));

describe('bad input through the whole review ends in a verdict or an unknown with its reason', () => {
  test.each<[string, string[], string[]?]>([
    ['one reading', [reading('B-1', '2025-10-01', 4.1)]],
    ['all readings on one day', [4, 4.1, 4.2].map((o2) => reading('B-1', '2025-10-01', o2))],
    ['identical values', years('B-1', [4, 4, 4, 4, 4, 4])],
    ['two units only', [...years('B-1', [4, 4.2, 4.4]), ...years('B-2', [4, 3.9, 4.1])]],
    ['one analyzer only', ['B-1', 'B-2', 'B-3', 'B-4'].flatMap((unit) => years(unit, [4, 4.1, 4.3, 4.4]))],
    ['no analyzer named', years('B-1', [4, 4.1, 4.3, 4.4], '')],
    ['a target missing', years('B-1', [4, 4.1, 4.3]), ['B-1,natural_gas,power,,,']],
    ['a band of zero width', years('B-1', [4, 4.1, 4.3]), ['B-1,natural_gas,power,4,4,4']],
    ['a reading 30 years old', [reading('B-1', '1996-03-01', 4)]],
    ['a reading 30 years old beside new ones', [reading('B-1', '1996-03-01', 4), ...years('B-1', [4, 4.1, 4.2])]],
    ['nothing known of the unit', years('B-1', [4, 4.1, 4.3]), ['B-1,,,,,']],
    ['a unit without readings', years('B-1', [4, 4.1, 4.3]), [PLATE, 'B-2,natural_gas,power,4,3.5,4.5']],
    ['no unit with readings in the register', years('B-9', [4, 4.1, 4.3])],
  ])('%s', async (_, rows, register) => {
    const drift = await review(rows, register);
    expect(drift.rows).toBeGreaterThan(0);
    expectVerdict(drift);
  });
});
