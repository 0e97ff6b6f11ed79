/** What CO2 a fuel of the notebook's own can give is known to the checks, which stand before derive. */
import { expect, test } from 'vitest';
import type { ChecksResult } from '../../../cells/checks/compute.ts';
import { kind } from '../../../cells/checks/kind.ts';
import type { CellResult } from '../../../shared/cell.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { textsOf } from '../../../shared/table/columns.ts';
import { CONTEXT, tableFrom } from '../derive/derive-readings.ts';

const FUELS = [{ name: 'digester_gas', mole_pct: { methane: 60, carbon_dioxide: 40 } }];

/** By stoichiometry, dry air of 20.95 % O2: 1 mol CO2 beside the nitrogen of 1.2 mol O2, 100 / (1 + 1.2 (100 / 20.95 - 1)) = 18.1 %. */
async function found(co2Pct: number, fuels: readonly unknown[]): Promise<readonly string[]> {
  const row = { unit: 'P-1', taken_at: '2025-01-15', fire: 'high', state: 'as_found', fuel: 'digester_gas' };
  const readings = {
    tables: { accepted: tableFrom(readingsSchema, [{ ...row, co2_pct: co2Pct, co2_from: 'measured' }]) },
  };
  const read = kind.readParameters({ register: '', fuels });
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const result = await kind.compute(
    read.value,
    new Map<string, CellResult>([['readings', readings]]),
    CONTEXT,
    undefined,
  );
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  return textsOf((result.value as ChecksResult).tables['findings'], 'check').levels;
}

test('CO2 above what biogas can give is found, and CO2 above what natural gas can give is not', async () => {
  expect(await found(19.4, FUELS)).toContain('co2_over_max');
  expect(await found(17, FUELS)).not.toContain('co2_over_max');
});

test('where the fuel is not known, its CO2 is not judged by another', async () => {
  expect(await found(17, [])).not.toContain('co2_over_max');
});

test.each([
  ['digester_gas', 'list of compositions'],
  [[{ name: 'x', mole_pct: { methan: 60 } }], 'methan'],
])('fuels that cannot be read are refused at the door', (fuels, part) => {
  expect(kind.readParameters({ fuels })).toMatchObject({ status: 'error', message: expect.stringContaining(part) });
});
