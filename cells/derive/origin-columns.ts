import { numbersOf, textsOf } from '../../shared/table/columns.ts';
import type { Column, Table, TextColumn } from '../../shared/table/table.ts';

const LEVELS = ['measured', 'calculated'];

/** Whether O2 and CO2 of each row were measured or calculated; unknown where they are. */
export function originColumns(readings: Table, derived: (name: string) => Float64Array): [string, Column][] {
  const o2 = numbersOf(readings, 'o2_pct');
  const co2 = numbersOf(readings, 'co2_pct');
  const said = textsOf(readings, 'co2_from');
  return [
    ['o2_from', originOf(readings.rows, derived('o2_pct'), (row) => (Number.isNaN(o2[row]) ? 1 : 0))],
    [
      'co2_from',
      originOf(readings.rows, derived('co2_pct'), (row) => {
        if (Number.isNaN(co2[row])) return 1;
        return said.codes[row] >= 0 && said.levels[said.codes[row]] === 'calculated' ? 1 : 0;
      }),
    ],
  ];
}

function originOf(rows: number, values: Float64Array, origin: (row: number) => number): TextColumn {
  const codes = new Int32Array(rows);
  for (let row = 0; row < rows; row++) codes[row] = Number.isNaN(values[row]) ? -1 : origin(row);
  return { kind: 'text', codes, levels: LEVELS };
}
