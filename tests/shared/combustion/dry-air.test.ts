import { expect, test } from 'vitest';
import { DERIVED_COLUMNS } from '../../../shared/combustion/derived-columns.ts';
import { cellOf, deriveReadings } from '../../cells/derive/derive-readings.ts';

test('the formulas of dry air are those of humid air with nothing in it', async () => {
  const rows = [
    { o2_pct: 5, flue_C: 45, air_C: 12, co_ppm: 30 },
    { o2_pct: 3, flue_C: 210, air_C: 31, co_ppm: 80, nox_ppm: 45 },
    { co2_pct: 9, co2_from: 'measured', flue_C: 84, air_C: -8 },
  ];
  const dry = await deriveReadings(rows);
  const humid = await deriveReadings(rows, { parameters: { relativeHumidityPct: 1e-12 } });
  for (const name of DERIVED_COLUMNS)
    rows.forEach((_, row) => {
      for (const column of [name, `${name}_sd`]) {
        const [a, b] = [dry, humid].map((result) => Number(cellOf(result, row, column)));
        expect(Number.isNaN(a), `${column} ${row}`).toBe(Number.isNaN(b));
        if (!Number.isNaN(a)) expect(a, `${column} ${row}`).toBeCloseTo(b, 9);
      }
    });
});
