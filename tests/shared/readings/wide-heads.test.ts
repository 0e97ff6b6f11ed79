import { expect, test } from 'vitest';
import { accepted, type Row, rowsOf } from './read-readings.ts';

const rowsIn = async (...lines: readonly string[]): Promise<Row[]> =>
  rowsOf((await accepted(`${lines.join('\n')}\n`)).tables['accepted']);

test.each([
  ['VL', 'TL'],
  ['GL', 'KL'],
  ['Hochlast', 'Schwachlast'],
  ['full rate', 'partial load'],
  ['carga máxima', 'carga mínima'],
  ['carico massimo', 'carico minimo'],
])('heads that end with "%s" and "%s" are those of high and low fire', async (high, low) => {
  const rows = await rowsIn(`Unit;Date;State;O2 ${high} (%);O2 ${low} (%)`, 'B-1;2024-03-13;as found;4.1;6.2');
  expect(rows.map(({ fire, o2_pct }) => `${fire} ${o2_pct}`)).toEqual(['high 4.1', 'low 6.2']);
});

test('a fire that is all a head says beside the state is the short name of an air temperature', async () => {
  const head = 'Kessel;Datum;Last;O2 vorher (%);TL vorher (°C);O2 nachher (%);TL nachher (°C)';
  const rows = await rowsIn(head, 'B-1;2024-03-13;Volllast;4.1;21;4.4;22');
  expect(rows.map(({ fire, state, air_C }) => `${fire} ${state} ${air_C}`)).toEqual([
    'high as_found 21',
    'high as_left 22',
  ]);
});

// An inch of water is 249.0889 Pa, a millimetre 9.80665 Pa (conventional): 8 in 1992.7112, 200 mm 1961.33.
test.each([
  ['Static pressure (in H2O)', '8', '1992.7112'],
  ['Static pressure [in wc]', '8', '1992.7112'],
  ['Static pressure', '8 inH2O', '1992.7112'],
  ['Static pressure (mm WC)', '200', '1961.33'],
  ['Static pressure', '200 mmH2O', '1961.33'],
  ['Static pressure (in Pa)', '2000', '2000'],
])('the unit in "%s" with "%s" is understood', async (head, cell, pascals) => {
  const rows = await rowsIn(
    `Unit;Date;Fire;State;O2 (%);${head}`,
    `B-1;2024-03-13;high;as found;4.1;${cell}`,
    `B-2;2024-03-13;high;as found;4.1;${cell.replace(/^\d+/, '----')}`,
  );
  expect(rows.map(({ supply_static_Pa }) => Number(supply_static_Pa))).toEqual([
    expect.closeTo(Number(pascals), 3),
    Number(''),
  ]);
});

test.each(['CO measured ppm', 'CO gemessen vorher ppm', 'CO mesuré ppm'])(
  '"%s" is the raw CO, as measured',
  async (head) => {
    const rows = await rowsIn(`Unit;Date;Fire;O2 vorher (%);${head}`, 'B-1;2024-03-13;high;4.1;58');
    expect(rows.map(({ co_ppm }) => co_ppm)).toContain('58');
  },
);

test('a unit in few of the cells does not say what the many without one are in', async () => {
  const lines = ['Unit;Date;Fire;State;O2 (%);Static pressure', 'B-1;2024-03-13;high;as found;4.1;9.9 inwc'];
  const bare = ['B-2;2024-03-13;high;as found;4.1;25', 'B-3;2024-03-13;high;as found;4.1;25'];
  await expect(rowsIn(...lines, ...bare)).rejects.toThrow(/Static pressure.*does not say its unit/);
});

test('a barometer without any unit is told by its size', async () => {
  const rows = await rowsIn('Unit;Date;Fire;State;O2 (%);Barometer', 'B-1;2024-03-13;high;as found;4.1;1013');
  expect(Number(rows[0].barometer_kPa)).toBeCloseTo(101.3, 6);
});
