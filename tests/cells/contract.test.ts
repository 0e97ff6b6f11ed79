import { describe, expect, test } from 'vitest';
import { catalogue } from '../../cells/catalogue.ts';
import type { CellKind, CellResult } from '../../shared/cell.ts';
import type { Outcome } from '../../shared/outcome.ts';
import { exampleContext, exampleInputs, exampleOf } from './read-example.ts';

/** Things that no kind expects as a parameter. */
const GARBAGE = [42, 'none', true, null, [1, 2], { a: { b: [] } }, Number.NaN, -1e308, '__proto__', ''];

/** Whether names of cells and files are texts, and every blank can be shown. */
function usable(kind: CellKind, parameters: unknown): boolean {
  const cells = [...kind.reads(parameters), ...(kind.fit?.reads(parameters) ?? [])].map(({ cell }) => cell);
  const shown = [...kind.sentence(parameters), ...(kind.details?.(parameters) ?? [])].map((segment) =>
    typeof segment === 'string' ? segment : segment.text,
  );
  return [...cells, ...kind.sources(parameters), ...shown].every((name) => typeof name === 'string');
}

async function computeExample(kind: CellKind): Promise<Outcome<CellResult>> {
  const example = exampleOf(kind.name);
  const read = kind.readParameters(example.parameters);
  if (read.status !== 'value') return read;
  const inputs = exampleInputs(example);
  const context = await exampleContext(example);
  if (!kind.fit) return kind.compute(read.value, inputs, context, undefined);
  const fitted = await kind.fit.compute(read.value, inputs, context);
  return fitted.status === 'value' ? kind.compute(read.value, inputs, context, fitted.value) : fitted;
}

describe.each([...catalogue.values()].map((kind) => [kind.name, kind] as const))('%s', (name, kind) => {
  test('is named as its folder, in plain words', () => {
    expect(exampleOf(name).kind).toBe(name);
    expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(kind.title).not.toBe('');
    expect(kind.purpose).toMatch(/^\p{Lu}.*\.$/su);
  });

  test('fills its defaults at the door, once, and survives JSON', () => {
    const filled = kind.readParameters({});
    expect(filled.status).toBe('value');
    if (filled.status !== 'value') return;
    expect(kind.readParameters(undefined)).toEqual(filled);
    expect(kind.readParameters(filled.value)).toEqual(filled);
    expect(JSON.parse(JSON.stringify(filled.value))).toEqual(filled.value);
  });

  test('garbage for a parameter is an error of one sentence or is put right, never a throw', () => {
    const filled = kind.readParameters(exampleOf(name).parameters);
    expect(filled.status).toBe('value');
    const names = filled.status === 'value' ? Object.keys(filled.value as object) : [];
    for (const parameter of names)
      for (const value of GARBAGE) {
        const read = kind.readParameters({
          ...(filled.status === 'value' ? (filled.value as object) : {}),
          [parameter]: value,
        });
        if (read.status === 'error') expect(read.message, parameter).toMatch(/^[^\n]+$/);
        if (read.status !== 'value') continue;
        // What was let in must be usable by everything that needs no data.
        const where = `${parameter}: ${JSON.stringify(value)}`;
        expect(() => usable(kind, read.value), where).not.toThrow();
        expect(usable(kind, read.value), where).toBe(true);
      }
    for (const value of GARBAGE) expect(() => kind.readParameters(value)).not.toThrow();
  });

  test('the blanks of its sentence are parameters of its own', () => {
    const read = kind.readParameters(exampleOf(name).parameters);
    if (read.status !== 'value') return expect(read.status).toBe('value');
    const segments = [...kind.sentence(read.value), ...(kind.details?.(read.value) ?? [])];
    const blanks = segments.filter((segment) => typeof segment !== 'string');
    const parameters = Object.keys(read.value as object);
    for (const { parameter } of blanks) expect(parameters).toContain(parameter);
    expect(new Set(blanks.map(({ parameter }) => parameter)).size).toBe(blanks.length);
    expect(kind.sentence(read.value).length).toBeGreaterThan(0);
  });

  test('its blanks are called in plain words, and shares are shown in per cent', () => {
    const read = kind.readParameters(exampleOf(name).parameters);
    if (read.status !== 'value') return expect(read.status).toBe('value');
    for (const segment of [...kind.sentence(read.value), ...(kind.details?.(read.value) ?? [])]) {
      if (typeof segment === 'string') continue;
      const { label, entry, text } = segment;
      // Words, not a parameter's name taken apart: no capitals inside, no underscores, no bare units.
      expect(label).toMatch(/^(CO|O2|[a-z]+)( ([a-z]+|CO|O2))*$/);
      expect(label).not.toMatch(/\b(pct|ppm|[cfk])\b/);
      if (entry.kind !== 'text') expect(text).not.toMatch(/[a-z]_[a-z]/);
      if (entry.kind === 'number' && entry.minimum !== undefined && (entry.maximum ?? 2) <= 1)
        expect([entry.factor, entry.unit]).toEqual([100, '%']);
    }
  });

  test('reads only what its parameters name, and the example gives all of it', () => {
    const example = exampleOf(name);
    const read = kind.readParameters(example.parameters);
    if (read.status !== 'value') return expect(read.status).toBe('value');
    const all = [...kind.reads(read.value), ...(kind.fit?.reads(read.value) ?? [])];
    expect(all.map(({ cell }) => cell)).not.toContain('');
    expect(Object.keys(example.inputs ?? {})).toEqual(
      expect.arrayContaining([...new Set(all.map(({ cell }) => cell))]),
    );
    expect(Object.keys(example.files ?? {})).toEqual(expect.arrayContaining([...kind.sources(read.value)]));
  });

  test('its example calculates, describes itself, twice the same', async () => {
    const first = await computeExample(kind);
    const second = await computeExample(kind);
    expect(first).toMatchObject({ status: 'value' });
    if (first.status !== 'value' || second.status !== 'value') return;
    expect(second.value.tables).toEqual(first.value.tables);
    expect(structuredClone(first.value.tables)).toEqual(first.value.tables);
    const { answer, tables } = kind.describe(first.value);
    expect(answer).not.toBe('');
    expect(answer).not.toMatch(/NaN|Infinity|undefined/);
    for (const shown of tables) {
      const table = first.value.tables[shown.table];
      expect(table, shown.table).toBeDefined();
      for (const { column } of shown.columns) expect([...table.columns.keys()], shown.table).toContain(column);
    }
  });

  test('holds no Infinity and names each of its files once', async () => {
    const result = await computeExample(kind);
    if (result.status !== 'value') return expect(result.status).toBe('value');
    for (const [table, { columns }] of Object.entries(result.value.tables))
      for (const [column, data] of columns)
        if (data.kind !== 'text')
          expect(
            data.values.some((value) => Math.abs(value) === Number.POSITIVE_INFINITY),
            `${table}.${column}`,
          ).toBe(false);
    const files = kind.files?.(result.value).map((file) => file.name) ?? [];
    expect(new Set(files).size).toBe(files.length);
    for (const file of files) expect(file).toMatch(/^[a-z-]+\.(csv|json)$/);
  });
});

test('the catalogue holds at least the note', () => {
  expect([...catalogue.keys()]).toContain('note');
});
