import { expect, test } from 'vitest';
import type { FuelUseResult } from '../../../cells/fuel-use/compute.ts';
import { kind } from '../../../cells/fuel-use/kind.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { contextOf, fileOf } from '../../shared/readings/file-of.ts';
import { rowsOf } from '../../shared/readings/read-readings.ts';

async function read(...lines: string[]): Promise<Outcome<FuelUseResult>> {
  const file = fileOf('bills.csv', `${lines.join('\n')}\n`);
  const parameters = kind.readParameters({ files: [file.name], register: '' });
  return parameters.status === 'value'
    ? kind.compute(parameters.value, new Map(), contextOf([file]), undefined)
    : parameters;
}

async function energies(...lines: string[]): Promise<number[]> {
  const outcome = await read(...lines);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return rowsOf(outcome.value.tables['use']).map(({ energy_kWh }) => Number(energy_kWh));
}

const HEAD = 'unit,fuel,from,to,quantity,quantity_unit,cost';
const year = '2024-07-01,2025-06-30';

test('energy units: therm, MMBtu, GJ, kWh (SI; known: memory)', async () => {
  const read = await energies(
    HEAD,
    `A,natural_gas,${year},1,therm,`,
    `B,natural_gas,${year},1,MMBtu,`,
    `C,natural_gas,${year},3.6,GJ,`,
    `D,natural_gas,${year},5,kWh,`,
  );
  expect(read[0]).toBeCloseTo(29.307107, 5);
  expect(read[1]).toBeCloseTo(293.07107, 4);
  expect(read.slice(2)).toEqual([1000, 5]);
});

test('volumes by the fuel', async () => {
  const [gallon, meter, cubicFeet] = await energies(
    HEAD,
    `A,no2_oil,${year},1,gal,`,
    `B,natural_gas,${year},1,m3,`,
    `C,natural_gas,${year},1,Mcf,`,
  );
  // 0.138 MMBtu a gallon of No. 2 oil (40 CFR 98 Table C-1; known: secondary).
  expect(gallon).toBeCloseTo(0.138 * 293.07107, 3);
  // Natural gas is billed at about 10.5 to 11 kWh gross a cubic meter and 1.026 MMBtu an Mcf (common practice, US average; 3 %).
  expect(meter).toBeGreaterThan(10.3);
  expect(meter).toBeLessThan(11.1);
  expect(cubicFeet / 293.07107).toBeGreaterThan(0.995);
  expect(cubicFeet / 293.07107).toBeLessThan(1.06);
});

test('the unit in the head, money with its sign', async () => {
  const outcome = await read('unit,fuel,from,to,"quantity (therm)",cost', `A,natural_gas,${year},100,"$1,234.50"`);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  expect(rowsOf(outcome.value.tables['use'])[0]).toMatchObject({
    cost: '1234.5',
    from: '2024-07-01',
    to: '2025-06-30',
  });
});

test('a measure that is no energy, a period that ends before it begins', async () => {
  const outcome = await read(
    HEAD,
    `A,natural_gas,${year},100,bananas,5`,
    'B,natural_gas,2025-06-30,2024-07-01,100,therm,5',
  );
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  expect(rowsOf(outcome.value.tables['use']).map(({ energy_kWh, cost }) => [energy_kWh, cost])).toEqual([['', '5']]);
  expect(outcome.value.faults.map(({ line }) => line)).toEqual([2, 3]);
});

test('"Unit" beside the quantity is its unit of measure where another column names the boiler', async () => {
  const energy = await energies(
    'Boiler,Fuel,From,To,Quantity,Unit',
    'A,natural_gas,2024-07-01,2025-06-30,"1,000",kWh',
    'B,natural_gas,2024-07-01,2025-06-30,3.6,GJ',
  );
  expect(energy).toEqual([1000, 1000]);
});
