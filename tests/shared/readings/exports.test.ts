import iconv from 'iconv-lite';
import { describe, expect, test } from 'vitest';
import { CASES, type ExportCase, KNOWN, type KnownReading } from '../../fixtures/exports/cases.ts';
import { fileOf } from './file-of.ts';
import { accepted, rowsOf } from './read-readings.ts';

/** Pa an inch of water: conventional, 249.08891 (UCUM [in_i'H2O]); as files carry it, to 12 digits. */
const inches = (value: number): string => String(Number((value * 249.08891).toPrecision(12)));

function expected({ rows = [0, 1, 2, 3], columns, inches: inWater }: ExportCase): Partial<KnownReading>[] {
  return rows.map((i) =>
    Object.fromEntries(
      columns.map((column) => {
        if (inWater && column === 'supply_static_Pa') return [column, inches(8)];
        if (inWater && column === 'supply_running_Pa') return [column, inches(7.2)];
        return [column, KNOWN[i][column]];
      }),
    ),
  );
}

const key = (row: Partial<KnownReading>): string => JSON.stringify(row);

test('there are thirty', () => expect(CASES.length).toBeGreaterThanOrEqual(30));

describe.each(CASES.map((example) => [example.name, example] as const))('%s', (_, example) => {
  test.each([17, 65_536])('in pieces of %d bytes', async (piece) => {
    const bytes = example.encoding
      ? iconv.encode(example.text, example.encoding, { addBOM: example.mark ?? false })
      : new TextEncoder().encode(example.text);
    const result = await accepted([fileOf('export.csv', bytes, piece)], example.options);
    expect(rowsOf(result.tables['set-aside'])).toEqual([]);
    const told = rowsOf(result.tables['accepted']).map((row) =>
      Object.fromEntries(example.columns.map((column) => [column, row[column]])),
    );
    expect(told.map(key).sort()).toEqual(expected(example).map(key).sort());
  });
});
