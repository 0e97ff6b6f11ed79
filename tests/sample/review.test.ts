import { beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../cells/catalogue.ts';
import type { Column } from '../../shared/table/table.ts';
import { Session } from '../../src/notebook/session.ts';
import { sampleFiles, sampleNotebook } from './sample-notebook.ts';

type Row = Readonly<Record<string, string | number>>;

/** Reasons that a review may give beside what was planted: none as of 2026-11-15 (the number that sample-data/README.md states). */
const BEYOND = 0;

const PLANTED: readonly (readonly [reason: string, unit: string, fire: string])[] = [
  ['co_high', 'DRU-2', 'high'],
  ['supply_drop_growing', 'GUL-2', ''],
  ['supply_drop_growing', 'HUT-3', ''],
  ['leaving_tolerance', 'COB-3', 'low'],
  ['leaving_tolerance', 'EMB-2', 'high'],
  ['leaving_tolerance', 'IRO-1', 'high'],
];

describe('the review of the sample campus', () => {
  const session = new Session(catalogue);

  /** A table's rows as objects; an unknown text is ''. */
  function rowsOf(cell: string, table: string): readonly Row[] {
    const columns = [...(session.result(cell)?.tables[table]?.columns ?? [])];
    const at = (column: Column, row: number): string | number =>
      column.kind === 'text' ? (column.levels[column.codes[row]] ?? '') : column.values[row];
    const rows = session.result(cell)?.tables[table]?.rows ?? 0;
    return Array.from({ length: rows }, (_, row) =>
      Object.fromEntries(columns.map(([name, column]) => [name, at(column, row)])),
    );
  }

  beforeAll(async () => {
    session.open(sampleNotebook(), sampleFiles());
    await session.calculate();
  }, 120_000);

  test('calculates every cell', () => {
    const unfinished = session.states().filter(({ phase }) => phase !== 'done');
    expect(unfinished.map(({ name, message }) => `${name}: ${message}`)).toEqual([]);
  });

  test.each(PLANTED)('raises %s of %s %s', (reason, unit, fire) => {
    const found = rowsOf('raise', 'raised').filter((row) => row.reason === reason && row.unit === unit);
    expect(found.map((row) => row.fire)).toEqual([fire]);
  });

  test('raises nothing else beyond the number stated', () => {
    const others = rowsOf('raise', 'raised').filter(
      (row) => !PLANTED.some(([reason, unit]) => reason === row.reason && unit === row.unit),
    );
    expect(others.length, JSON.stringify(others)).toBeLessThanOrEqual(BEYOND);
  });

  test('names the analyzer that reads O2 high by about 0.5, and no other', () => {
    const rows = rowsOf('instruments', 'instruments');
    const biased = rows.filter(({ verdict }) => verdict === 'biased');
    expect(biased.map(({ analyzer }) => analyzer)).toEqual(['An-342']);
    expect(Math.abs(Number(biased[0]?.o2_bias_pct) - 0.5)).toBeLessThan(0.15);
  });

  test('knows the fuel a year of the register: 5,100 MMBtu are 1.4947 GWh (1 MMBtu = 293.07 kWh, handbooks)', () => {
    const [first] = rowsOf('register', 'economics').filter(({ unit }) => unit === 'ALD-1');
    expect(Number(first?.annual_fuel_kWh) / (5100 * 293.07)).toBeCloseTo(1, 4);
    expect(Number(first?.fuel_price_per_kWh) * 293.07).toBeCloseTo(9.4, 3);
  });

  test('keeps the five faulty rows apart with their reasons', () => {
    const reasons = rowsOf('readings', 'set-aside').map(({ source_file, reason }) => `${source_file}: ${reason}`);
    expect(reasons).toHaveLength(5);
    for (const [index, found] of [/5\.x/, /2027-03-04/, /no measurement/, /31\.11\.2022/, /3,,4/].entries())
      expect(reasons[index]).toMatch(found);
  });
});
