import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { campusReview } from '../../../src/notebook/campus-review.ts';
import { CELL_NAME } from '../../../src/notebook/document.ts';
import schema from '../../../src/notebook/notebook.schema.json';
import { readDocument } from '../../../src/notebook/read-document.ts';
import { writeDocument } from '../../../src/notebook/write-document.ts';
import { notebookOf, sumCell } from './fixtures.ts';

const DATE = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;
const ajv = new Ajv2020({ strict: true, formats: { date: DATE } });
const validate = ajv.compile(schema);

const hash = 'a'.repeat(64);
const good = notebookOf([sumCell('a', []), sumCell('b', ['a'])], {
  data: [{ key: 'readings.csv', name: 'readings.csv', size: 12, hash }],
  outcomes: { 'B-07': [1, 2] },
  '2031 idea': null,
});

function read(document: unknown) {
  return readDocument('n.json', typeof document === 'string' ? document : JSON.stringify(document));
}

function refusal(document: unknown): string {
  const outcome = read(document);
  if (outcome.status !== 'error') throw new Error('was accepted');
  return outcome.message;
}

describe('reading a notebook', () => {
  test('unknown fields survive a round trip, byte for byte', () => {
    const text = writeDocument(good);
    const outcome = read(text);
    expect(outcome.status === 'value' && writeDocument(outcome.value)).toBe(text);
    expect(text.endsWith('}\n')).toBe(true);
  });

  test.each<[string, unknown, RegExp]>([
    ['a truncated file', writeDocument(good).slice(0, 200), /no complete JSON/],
    ['an empty file', '', /no complete JSON/],
    ['a file of another kind', { rows: [] }, /format/],
    ['a list', [], /object/],
    ['a newer version', { ...good, version: 2 }, /newer version.*2.*1/],
    ['a version that is none', { ...good, version: 'one' }, /version/],
    ['no title', { ...good, title: undefined }, /title/],
    ['a day that is none', { ...good, as_of: '2026-02-30' }, /as_of/],
    ['cells that are no list', { ...good, cells: {} }, /cells/],
    ['a cell without parameters', { ...good, cells: [{ name: 'a', kind: 'sum' }] }, /cells\[0\]\.parameters/],
    ['a cell name that is none', { ...good, cells: [{ name: '#', kind: 'sum', parameters: {} }] }, /cells\[0\]\.name/],
    ['a name used twice', { ...good, cells: [sumCell('a', []), sumCell('a', [])] }, /two cells are named "a"/],
    ['a data key used twice', { ...good, data: [good.data[0], good.data[0]] }, /readings\.csv/],
    ['a hash that is none', { ...good, data: [{ ...good.data[0], hash: 'abc' }] }, /data\[0\]\.hash/],
    ['a prototype-polluting key', writeDocument(good).replace('"outcomes"', '"__proto__"'), /__proto__/],
    [
      'one deep inside',
      JSON.stringify(good).replace('"reads":[]', '"reads":[{"__proto__":{"polluted":1}}]'),
      /__proto__/,
    ],
    ['nesting without end', `{"format":${'['.repeat(5000)}${']'.repeat(5000)}}`, /nested/],
  ])('%s is refused in one sentence that names the file', (_, document, found) => {
    const message = refusal(document);
    expect(message).toMatch(found);
    expect(message).toMatch(/^n\.json[^\n]+$/);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  test('a draft from before version 1 is brought up to date', () => {
    const draft = {
      format: 'between-visits-notebook',
      version: 0,
      title: 'Draft',
      as_of: '2025-01-31',
      cells: [{ name: 'memo', kind: 'note', text: 'Old.' }],
      mine: true,
    };
    expect(read(draft)).toEqual({
      status: 'value',
      value: {
        ...draft,
        version: 1,
        settings: {},
        data: [],
        cells: [{ name: 'memo', kind: 'note', parameters: { text: 'Old.' } }],
      },
    });
  });

  test('a byte order mark before the text does no harm', () => {
    expect(read(`\uFEFF${JSON.stringify(good)}`).status).toBe('value');
  });
});

describe('the published schema (JSON Schema 2020-12, checked by ajv)', () => {
  test('takes what the program writes', () => {
    expect(validate(good), JSON.stringify(validate.errors)).toBe(true);
    const review = campusReview({
      title: 'R',
      asOf: '2026-03-31',
      data: good.data,
      readings: ['readings.csv'],
      register: ['r.csv'],
    });
    expect(validate(review), JSON.stringify(validate.errors)).toBe(true);
  });

  test('holds the same pattern for names as the program', () => {
    expect(new RegExp(schema.properties.cells.items.properties.name.pattern, 'u').source).toBe(CELL_NAME.source);
  });

  test('and the program agree on damaged notebooks', () => {
    const value = fc.oneof(
      fc.constantFrom<unknown>(undefined, null, 1, -1, 1.5, '', 'abc', '2026-01-31', [], {}, [{}], hash),
      fc.jsonValue({ maxDepth: 2 }),
    );
    const damage = fc.oneof(
      fc
        .tuple(fc.constantFrom('format', 'version', 'title', 'as_of', 'settings', 'data', 'cells', 'outcomes'), value)
        .map(([field, wrong]) => ({ ...good, [field]: wrong })),
      fc
        .tuple(fc.constantFrom('key', 'name', 'size', 'hash', 'text', 'else'), value)
        .map(([field, wrong]) => ({ ...good, data: [{ ...good.data[0], [field]: wrong }] })),
      fc
        .tuple(fc.constantFrom('name', 'kind', 'parameters', 'else'), value)
        .map(([field, wrong]) => ({ ...good, cells: [{ ...good.cells[0], [field]: wrong }] })),
      fc
        .tuple(fc.constantFrom('seed', 'currency', 'else'), value)
        .map(([field, wrong]) => ({ ...good, settings: { [field]: wrong } })),
    );
    fc.assert(
      fc.property(damage, (document) => {
        const plain = JSON.parse(JSON.stringify(document)) as { version?: unknown };
        // Older versions and days that no calendar has are the program's business alone.
        fc.pre(plain.version !== 0);
        expect(read(plain).status === 'value').toBe(validate(plain));
      }),
      { numRuns: 600, seed: 11 },
    );
  });
});
