/** A fuel of the notebook's own, declared once in derive, is known to everything that reads it. */
import { beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import type { SourceFile } from '../../../shared/cell.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';
import { campusReview } from '../../../src/notebook/campus-review.ts';
import { Session } from '../../../src/notebook/session.ts';

const file = (name: string, text: string): SourceFile => {
  const bytes = new TextEncoder().encode(text);
  return {
    name,
    size: bytes.length,
    hash: name,
    async *open() {
      yield bytes;
    },
  };
};

/** Biogas of 60 % methane: by stoichiometry 2 x 0.6 mol of O2, 1 mol of CO2 out of it. */
const BIOGAS = { name: 'digester_gas', mole_pct: { methane: 60, carbon_dioxide: 40 } };
const DRY_AIR = 1.2 / 0.2095;
const CO2_MAX = 100 / (1 + DRY_AIR - 1.2);

const READINGS = [
  'unit,taken_at,fire,state,fuel,o2_pct,co_ppm,flue_C,air_C,analyzer',
  ...[2021, 2022, 2023, 2024, 2025].flatMap((year, i) => [
    `P-1,${year}-01-15,high,as_found,digester_gas,${4.4 + 0.1 * i},20,190,2,K-1`,
    `P-1,${year}-01-15,high,as_left,digester_gas,${1.9 + 0.05 * i},30,180,2,K-1`,
  ]),
].join('\n');
const REGISTER = [
  'unit,fuel,burner,fuel_air_control,air_source,co2_high_target_pct,co2_high_tolerance_pct,annual_fuel_kWh,fuel_price',
  'P-1,digester_gas,power,linkage,outside,15.3,0.5,1000000,0.05',
].join('\n');

describe('biogas, declared in derive', () => {
  let tables: (cell: string) => Readonly<Record<string, Table>>;
  let failed: string[];
  beforeAll(async () => {
    const session = new Session(catalogue);
    const document = campusReview({
      title: 't',
      asOf: '2026-03-31',
      data: [],
      readings: ['r.csv'],
      register: ['g.csv'],
    });
    const cells = document.cells.map((cell) => {
      if (cell.kind === 'derive') return { ...cell, parameters: { ...cell.parameters, fuels: [BIOGAS] } };
      if (cell.kind === 'readings' || cell.kind === 'register')
        return { ...cell, parameters: { ...cell.parameters, fuels: [BIOGAS.name] } };
      if (cell.kind === 'checks') return { ...cell, parameters: { ...cell.parameters, fuels: [BIOGAS] } };
      return cell;
    });
    session.open(
      { ...document, cells },
      new Map([file('r.csv', READINGS), file('g.csv', REGISTER)].map((f) => [f.name, f])),
    );
    await session.calculate();
    failed = session
      .states()
      .flatMap((state) => ('message' in state && state.message ? [`${state.name}: ${state.message}`] : []));
    tables = (cell) => session.result(cell)?.tables ?? {};
  });

  test('nothing fails', () => {
    expect(failed).toEqual([]);
  });
  test('derive: CO2max by stoichiometry', () => {
    const { fuels } = tables('derive');
    const row = textsOf(fuels, 'fuel').levels.indexOf('digester_gas');
    expect(numbersOf(fuels, 'co2_max_pct')[row]).toBeCloseTo(CO2_MAX, 6);
    expect(numbersOf(tables('derive').derived, 'efficiency_gross_pct')[0]).toBeGreaterThan(70);
  });
  test('drift: its CO2 lane lies on its own line', () => {
    const { drift } = tables('drift');
    expect(textAt(textsOf(drift, 'quantity'), 0)).toBe('co2_pct');
    const level = numbersOf(drift, 'level_now')[0];
    // At reference air the last O2 lies between 0 and 2 %.
    expect(level).toBeGreaterThan(CO2_MAX * (1 - 2.5 / 20.95));
    expect(level).toBeLessThanOrEqual(CO2_MAX * 1.01);
  });
  test('raise: rich in summer is judged with it', () => {
    const { raised } = tables('raise');
    expect(textsOf(raised, 'reason').levels).toContain('rich_in_summer');
  });
  test('savings: efficiency and CO2 by its carbon', () => {
    const { savings } = tables('savings');
    expect(numbersOf(savings, 'fuel_saved_pct')[0]).toBeGreaterThan(0.3);
    const [co2, cost] = ['co2e_saved_kg', 'cost_saved'].map((name) => numbersOf(savings, name)[0]);
    // 1 mol CO2 from 0.6 x 890.58 kJ (ISO 6976): 44.0095 g / 0.14843 kWh, at a price of 0.05.
    expect(co2 / (cost / 0.05)).toBeCloseTo(44.0095e-3 / ((0.6 * 890.58) / 3600), 5);
  });
});
