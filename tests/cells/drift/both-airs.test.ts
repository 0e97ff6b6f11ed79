import { expect, test } from 'vitest';
import { kind } from '../../../cells/drift/kind.ts';
import type { CellContext, CellResult } from '../../../shared/cell.ts';
import { tableOfRecords } from '../../../shared/foresight/table-of-records.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { derivedSchema } from '../../../shared/schemas/derived.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { limitsSchema, targetsSchema, unitsSchema } from '../../../shared/schemas/register.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';

const FIRST = readIsoDate('2018-01-10');
const context: CellContext = {
  asOf: readIsoDate('2026-03-31'),
  seed: 1,
  signal: new AbortController().signal,
  source: () => undefined,
  progress: () => {},
  pause: async () => {},
};

/** Yearly visits as found; each unit drifts a little, and the air of each day moves what is shown by up to `swing` points of O2. */
function inputs(units: number, swing: number): Map<string, CellResult> {
  const rows = Array.from({ length: units * 8 }, (_, i) => {
    const [unit, visit] = [Math.floor(i / 8), i % 8];
    const level = 4 + ((unit % 7) - 3) * 0.04 * visit + 0.05 * Math.sin(i * 7.3);
    return {
      unit: `B-${String(unit).padStart(4, '0')}`,
      taken_at: FIRST + visit * 365 + (unit % 300),
      fire: 'high',
      state: 'as_found',
      fuel: 'natural_gas',
      adjusted: 'no',
      analyzer: `FA-${i % 3}`,
      o2_pct: level + swing * Math.sin(i * 12.9898),
      o2_pct_sd: 0.1,
      o2_from: 'measured',
      o2_reference_pct: level,
      o2_reference_pct_sd: 0.1,
    };
  });
  const each = Array.from({ length: units }, (_, unit) => rows[unit * 8].unit);
  const limits = each.map((unit) => ({
    unit,
    fuel: 'natural_gas',
    fire: 'high',
    quantity: 'o2_pct',
    target_pct: 4,
    setting_lower_pct: 3.5,
    setting_upper_pct: 4.5,
  }));
  const register = each.map((unit) => ({ unit, fuel: 'natural_gas', burner: 'power' }));
  return new Map<string, CellResult>([
    ['readings', { tables: { accepted: tableOfRecords(readingsSchema, rows) } }],
    ['derive', { tables: { derived: tableOfRecords(derivedSchema, rows) } }],
    [
      'register',
      {
        tables: {
          units: tableOfRecords(unitsSchema, register),
          limits: tableOfRecords(limitsSchema, limits),
          targets: tableOfRecords(targetsSchema, limits),
        },
      },
    ],
  ]);
}

async function driftOf(given: Map<string, CellResult>, referenceAir = true) {
  const parameters = kind.readParameters({ referenceAir });
  if (parameters.status !== 'value') throw new Error('no parameters');
  const result = await kind.compute(parameters.value, given, context, undefined);
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  const { tables } = result.value;
  const remark = kind.describe(result.value).remarks.find(({ text }) => /[Rr]eference air (does|changes)/.test(text));
  return { drift: tables['drift'], air: tables['air'], remark: remark?.text ?? '' };
}

test('what stands beside as measured is what the fit says that is made as measured', async () => {
  const given = inputs(40, 0.6);
  const [{ air, drift: here, remark }, { drift: there }] = [await driftOf(given), await driftOf(given, false)];
  expect(air.rows).toBe(40);
  expect([...numbersOf(air, 'slope_reference_air')]).toEqual([...numbersOf(here, 'slope_per_year')]);
  const rates = numbersOf(there, 'slope_per_year');
  // The one search starts where the other ended, so hyperparameters differ by what a search leaves: far less than is known.
  numbersOf(air, 'slope_as_measured').forEach((rate, row) => {
    expect(Math.abs(rate - rates[row])).toBeLessThan(0.005);
  });
  expect(remark).toMatch(/^What reference air does: \d+ of 40 lanes change their verdict/);
});

test('in a large fleet a thousand units are fitted in both airs, and it is said', async () => {
  const { air, drift, remark } = await driftOf(inputs(1100, 0.6));
  expect(drift.rows).toBe(1100);
  expect(air.rows).toBe(1000);
  const unit = textsOf(air, 'unit');
  expect(new Set(Array.from({ length: air.rows }, (_, row) => textAt(unit, row))).size).toBe(1000);
  expect(remark).toMatch(/^What reference air does, by 1000 units taken at random: \d+ of 1000 lanes/);
});

test('where the air changes no reading, nothing is set side by side', async () => {
  for (const units of [5, 1100]) {
    const { air, remark } = await driftOf(inputs(units, 0));
    expect(air.rows).toBe(0);
    expect(remark).toMatch(/^Reference air changes no reading here/);
  }
});
