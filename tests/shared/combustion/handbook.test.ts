import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  HANDBOOK_HUMIDITY_PCT,
  HANDBOOK_READING,
  writeHandbook,
} from '../../../shared/combustion/relations/handbook.ts';
import { RELATIONS } from '../../../shared/combustion/relations/relations.ts';
import { COMBUSTION_SOURCES } from '../../../shared/sources/combustion.ts';
import { FUEL_SOURCES } from '../../../shared/sources/fuels.ts';
import type { Source } from '../../../shared/sources/source.ts';
import { deriveReadings } from '../../cells/derive/derive-readings.ts';

const FILE = join(import.meta.dirname, '../../../shared/methods.md');
const EXAMPLE = { parameters: { relativeHumidityPct: HANDBOOK_HUMIDITY_PCT } };
const SOURCES: Readonly<Record<string, Source>> = { ...FUEL_SOURCES, ...COMBUSTION_SOURCES };

test('shared/methods.md is what the definitions say; UPDATE_METHODS=1 writes it anew', async () => {
  const result = await deriveReadings([HANDBOOK_READING], EXAMPLE);
  const written = writeHandbook(SOURCES, (name) => {
    const found = result.working(name, 0);
    return found.status === 'value' ? found.value : undefined;
  });
  if (process.env.UPDATE_METHODS) writeFileSync(FILE, written);
  expect(readFileSync(FILE, 'utf8')).toBe(written);
  expect(written).not.toMatch(/NaN|Infinity|undefined/);
});

test('every relation names a source that the bibliography holds, a validity, and a symbol', () => {
  for (const { name, source, validity, symbol, title } of RELATIONS) {
    expect(Object.keys(SOURCES), name).toContain(source);
    expect(validity, name).toMatch(/\.$/);
    expect(symbol, name).not.toBe('');
    expect(title, name).not.toBe('');
  }
});

test('every relation of the example has a value: none goes to print unknown', async () => {
  const result = await deriveReadings([HANDBOOK_READING], EXAMPLE);
  for (const { name } of RELATIONS) {
    const found = result.working(name, 0);
    expect(found.status === 'value' && found.value.steps.at(-1)?.value, name).not.toBeNaN();
  }
});
