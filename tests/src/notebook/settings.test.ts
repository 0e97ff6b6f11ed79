import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import type { SourceFile } from '../../../shared/cell.ts';
import { numbersOf } from '../../../shared/table/columns.ts';
import { openNotebook } from '../../../src/cli/calculate.ts';
import { Session } from '../../../src/notebook/session.ts';
import { writtenFiles } from '../../../src/notebook/written-files.ts';
import { notebookOf } from './fixtures.ts';

const SAMPLE = join(import.meta.dirname, '../../../sample-data');

function fileOf(name: string, text: string): SourceFile {
  const bytes = new TextEncoder().encode(text);
  return {
    name,
    size: bytes.length,
    hash: name,
    async *open() {
      yield bytes;
    },
  };
}

/** O2 at reference air of one reading at 35 °C of a burner whose fan moves a fixed volume. */
async function o2At(referenceAirC: number | undefined): Promise<number> {
  const session = new Session(catalogue);
  const cells = [
    { name: 'register', kind: 'register', parameters: { files: ['register.csv'] } },
    { name: 'readings', kind: 'readings', parameters: { files: ['readings.csv'] } },
    { name: 'derive', kind: 'derive', parameters: {} },
  ];
  const document = notebookOf(cells);
  const settings = referenceAirC === undefined ? {} : { reference_air_C: referenceAirC };
  session.open(
    { ...document, settings },
    new Map([
      ['register.csv', fileOf('register.csv', 'unit,fuel,burner,air_source\nB-1,natural_gas,power,room\n')],
      [
        'readings.csv',
        fileOf('readings.csv', 'unit,taken_at,fire,state,o2_pct,air_C\nB-1,2024-07-01,high,as_left,4.0,35\n'),
      ],
    ]),
  );
  await session.calculate();
  const derived = session.result('derive')?.tables['derived'];
  expect(session.states().map(({ message }) => message)).toEqual(['', '', '']);
  return derived ? numbersOf(derived, 'o2_reference_pct')[0] : Number.NaN;
}

describe('reference air', () => {
  test('a reading taken in just that air stays as it is', async () => {
    expect(await o2At(35)).toBeCloseTo(4, 9);
  });

  test('in colder air a fan of fixed volume moves more of it, as density (fan laws, memory)', async () => {
    // Lambda goes with density at constant volume; 20.95 % O2 in dry air; lambda - 1 = ratio * O2 / (20.95 - O2), so that
    // the ratio of dry flue gas to air need not be known to compare two references.
    const [warm, usual, cold] = [await o2At(35), await o2At(undefined), await o2At(0)];
    const excess = (o2: number): number => o2 / (20.95 - o2);
    const kelvin = (celsius: number): number => celsius + 273.15;
    const growth = (celsius: number): number => kelvin(35) / kelvin(celsius) - 1;
    // e' - e = (1 + e) (growth), the same factor (1 + e) for both, divided by one ratio.
    expect((excess(cold) - excess(warm)) / (excess(usual) - excess(warm))).toBeCloseTo(growth(0) / growth(20), 6);
    expect(await o2At(20)).toBe(usual);
  });
});

describe('settings of the sample campus', () => {
  let session: Session;
  beforeAll(async () => {
    const { document, files } = await openNotebook(SAMPLE, 'campus-review.json');
    session = new Session(catalogue);
    session.open(document, files);
    await session.calculate();
  });
  const report = (): string =>
    [
      ...(writtenFiles(session)
        .find(({ name }) => name === 'report.html')
        ?.pieces() ?? []),
    ].join('');

  test('currency: the savings tell it, and nothing else is calculated again', async () => {
    session.edit({ operation: 'set-setting', setting: 'currency', value: 'EUR' });
    await session.calculate();
    expect(session.state('savings')?.description?.answer).toContain(' a year in EUR ');
    expect(report()).toContain('Cost saved a year, EUR');
    expect(session.why('savings')).toMatch(/^Calculated again/);
    expect(session.why('derive')).toMatch(/^Not calculated again/);
    session.undo();
  });

  test('pressure unit: the report prints it, the files keep pascals', async () => {
    const supply = (): string =>
      [
        ...(writtenFiles(session)
          .find(({ name }) => name === 'supply.csv')
          ?.pieces() ?? []),
      ].join('');
    await session.calculate();
    const [before, printed] = [supply(), report()];
    expect(printed).toContain('Static, Pa');
    session.edit({ operation: 'set-setting', setting: 'pressure_unit', value: "[in_i'H2O]" });
    await session.calculate();
    expect(report()).toContain('Static, in. w.c.');
    expect(report()).not.toContain('Static, Pa');
    expect(supply()).toBe(before);
  });

  test.each([
    ['currency', 'euro'],
    ['currency', 7],
    ['pressure_unit', 'furlong'],
    ['reference_air_C', 400],
    ['reference_air_C', '20'],
    ['seed', -1],
    ['__proto__', {}],
  ])('%s cannot be %j', (setting, value) => {
    const before = session.document();
    const edited = session.edit({ operation: 'set-setting', setting, value });
    expect(edited).toMatchObject({ status: 'error', message: expect.stringContaining(setting) });
    expect(session.document()).toBe(before);
  });
});
