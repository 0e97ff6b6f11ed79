import type { ChecksResult } from '../../../cells/checks/compute.ts';
import { kind } from '../../../cells/checks/kind.ts';
import type { CellResult } from '../../../shared/cell.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { contextOf } from '../../shared/readings/file-of.ts';
import { accepted, rowsOf } from '../../shared/readings/read-readings.ts';

/** Natural gas reads about 9.1 % CO2 at 4.9 % O2 (CO2max 11.9: 11.9 (20.95 - 4.9) / 20.95; stoichiometry). */
const HEAD =
  'unit,taken_at,fire,state,technician,o2_pct,co2_pct,co2_from,co_ppm,co_air_free_ppm,flue_C,air_C,water_return_C,supply_static_Pa,supply_running_Pa,manifold_Pa,efficiency_printed_pct,excess_air_printed_pct,analyzer,calibrated_on,co_ambient_ppm,adjusted,firing_rate_pct,water_supply_C';

export type Cells = Readonly<Record<string, string | number>>;

const line = (cells: Cells): string =>
  HEAD.split(',')
    .map((name) =>
      String(
        cells[name] ??
          ({ unit: 'A-1', taken_at: '2024-03-13T10:00', fire: 'high', state: 'as_found', o2_pct: 4.9 } as Cells)[
            name
          ] ??
          '',
      ),
    )
    .join(',');

/** The rows as the import accepts them. */
export const readingsOf = (rows: readonly Cells[]): Promise<CellResult> =>
  accepted(`${[HEAD, ...rows.map(line)].join('\n')}\n`);

/** What the checks find in a few readings of three units. */
export async function check(rows: readonly Cells[], parameters: Cells = {}): Promise<ChecksResult> {
  const readings = await readingsOf(rows);
  const register = {
    tables: {
      units: makeTable([
        ['unit', textColumn(['A-1', 'A-2', 'A-3'])],
        ['fuel', textColumn(['natural_gas', 'natural_gas', 'no2_oil'])],
        ['building', textColumn(['House', 'House', 'Barn'])],
        ['installed_on', { kind: 'date', values: Float64Array.of(14_000, Number.NaN, Number.NaN) }],
      ]),
      // 7 to 10.5 in. w.c.
      'supply-limits': makeTable([
        ['unit', textColumn(['A-2'])],
        ['supply_min_Pa', numberColumn('Pa', Float64Array.of(1744))],
        ['supply_max_Pa', numberColumn('Pa', Float64Array.of(2615))],
      ]),
    },
  };
  const read = kind.readParameters(parameters);
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const inputs = new Map<string, CellResult>([
    ['readings', readings],
    ['register', register],
  ]);
  const outcome = await kind.compute(read.value, inputs, contextOf(), undefined);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

/** The checks that found something. */
export const names = (result: ChecksResult): string[] => [
  ...new Set(rowsOf(result.tables['findings']).map((row) => row['check'])),
];

/** Ten readings of one unit in ten years, high fire, with nothing wrong. */
export const years = (cells: (i: number) => Cells): Cells[] =>
  Array.from({ length: 10 }, (_, i) => ({
    taken_at: `20${14 + i}-03-1${i}T09:00`,
    o2_pct: 4.9 + (i % 3) / 10,
    ...cells(i),
  }));

export const findings = (result: ChecksResult): ReturnType<typeof rowsOf> => rowsOf(result.tables['findings']);
