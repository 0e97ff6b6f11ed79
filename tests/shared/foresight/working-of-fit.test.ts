import { describe, expect, test } from 'vitest';
import { judgedLevel } from '../../../shared/foresight/judged-level.ts';
import { workingOfFit } from '../../../shared/foresight/working-of-fit.ts';
import { derivedSchema } from '../../../shared/schemas/derived.ts';
import { driftSchema } from '../../../shared/schemas/drift.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { type Schema, tableOf } from '../../../shared/table/schema.ts';
import type { Column, Table } from '../../../shared/table/table.ts';

const table = (schema: Schema, rows: number, given: Readonly<Record<string, readonly (string | number)[]>>): Table =>
  tableOf(
    schema,
    rows,
    new Map(
      Object.entries(given).map(([name, values]): [string, Column] => [
        name,
        typeof values[0] === 'string'
          ? textColumn(values.map(String))
          : numberColumn('%', Float64Array.from(values, Number)),
      ]),
    ),
  );

const KEY = { unit: ['A', 'A', 'B'], fire: ['high', 'low', 'high'] };
const derived = table(derivedSchema, 3, {
  ...{ ...KEY, fuel: ['natural_gas', 'natural_gas', 'natural_gas'] },
  ...{ co2_reference_pct: [8.9, 8.1, 9], co2_reference_pct_sd: [0.2, 0.2, 0.2] },
});
const readings = table(readingsSchema, 3, { ...KEY, source_file: ['a.csv', 'a.csv', 'a.csv'], source_line: [2, 3, 4] });
const drift = (level: number): Table =>
  table(driftSchema, 1, {
    ...{ unit: ['A'], fuel: ['natural_gas'], fire: ['high'], quantity: ['co2_pct'], readings_used: [7] },
    ...{ level_now: [level], level_now_sd: [0.05], lower_limit: [8.4], upper_limit: [9.2] },
  });
const ground = {
  ...{ derived, readings, cell: 'derive', column: 'co2_reference_pct' },
  ...{ unit: 'A', fuel: 'natural_gas', fire: 'high', source: 'stateSpace' },
};

describe('the working of a fitted number', () => {
  test('begins with the last reading of its lane and says that a fit is no formula', () => {
    const { level } = judgedLevel(drift(8.7), 0);
    const { steps, inputs, functions, readings: from } = workingOfFit('level_now', level, ground);
    expect(steps).toHaveLength(1);
    expect(steps[0]).toMatchObject({ symbols: 'CO2,now = fit(CO2,ref)', result: '8.7 %', source: 'stateSpace' });
    expect(steps[0].numbers).toBe('CO2,now = fit(..., 8.9 %)');
    expect(inputs.map(({ from: place }) => place)).toEqual([{ cell: 'derive', column: 'co2_reference_pct', row: 0 }]);
    expect(functions.map(({ usage }) => usage)).toEqual(['fit(x)']);
    expect(from[0]).toMatchObject({ file: 'a.csv', line: 2 });
  });

  test.each([
    [8.7, 0.3, 'CO2,now − CO2,lower'],
    [9.1, 0.1, 'CO2,upper − CO2,now'],
    [8.3, -0.1, 'CO2,now − CO2,lower'],
    [9.5, -0.3, 'CO2,upper − CO2,now'],
  ])('the margin of %d %% in a band of 8.4 to 9.2 is %d, negative beyond the limit', (value, margin, words) => {
    const judged = judgedLevel(drift(value), 0, true);
    const { steps } = workingOfFit('margin_now', judged.level, ground, { ...judged, source: 'jcgm106' });
    expect(steps[1].value).toBeCloseTo(margin, 12);
    expect(steps[1].symbols).toBe(`ΔCO2 = ${words}`);
  });

  test('without any reading of its lane it says the fit alone', () => {
    const { level } = judgedLevel(drift(8.7), 0);
    const { steps, inputs, readings: from } = workingOfFit('level_now', level, { ...ground, unit: 'Z' });
    expect(steps[0].numbers).toBe('CO2,now = fit()');
    expect(inputs).toEqual([]);
    expect(from).toEqual([]);
  });
});
