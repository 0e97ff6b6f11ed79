import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../cells/catalogue.ts';
import { makeFleet } from '../bench/fleet.ts';
import { buildPage, ROOT } from '../src/app/built-page.ts';
import { calculateInBrowser } from '../src/app/calculate-in-browser.ts';

const UNITS = 2000;
const ROWS_PER_UNIT = 24;
const SAMPLE = join(ROOT, 'sample-data');
const folder = mkdtempSync(join(tmpdir(), 'between-visits-same-'));
const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

interface Cell {
  readonly name: string;
  readonly kind: string;
  readonly parameters: Readonly<Record<string, unknown>>;
}

interface Notebook {
  readonly text: string;
  readonly cells: readonly Cell[];
  /** Data files by name. */
  readonly files: Readonly<Record<string, string>>;
}

const signed = { reason: 'Read again.', initials: 'KL', made_on: '2026-01-02' };
const moreCells = (row: Readonly<Record<string, unknown>>): readonly Cell[] => [
  {
    name: 'corrections',
    kind: 'corrections',
    parameters: { corrections: [{ action: 'change', row, column: 'o2_pct', value: '4.4', ...signed }] },
  },
  { name: 'backcheck', kind: 'backcheck', parameters: { years: 2 } },
];

/** A seeded fleet with a cell of every kind. */
function fleetNotebook(): Notebook {
  const { readings, register } = makeFleet(UNITS * ROWS_PER_UNIT, 7);
  const files = {
    'register.csv': register,
    'readings.csv': readings,
    'events.csv': 'unit,on,event,note\nU-00007,2023-02-01,gas valve,renewed\nU-00011,2024-05-01,laid up,\n',
    'fuel-use.csv':
      'unit,fuel,from,to,quantity,quantity_unit,cost\nU-00001,natural_gas,2024-07-01,2025-06-30,3100,MMBtu,29140\n',
  };
  const of = (kind: string, file: string): Cell => ({ name: kind, kind, parameters: { files: [file] } });
  const row = { unit: 'U-00003', taken_at: '2021-03-03', fire: 'high', state: 'as_found', fuel: '' };
  const cells = [
    ...Object.keys(files).map((name) => of(name.replace('.csv', ''), name)),
    ...['checks', 'derive', 'drift', 'supply', 'instruments', 'raise', 'savings', 'chart', 'note'].map((kind) => ({
      name: kind,
      kind,
      parameters: ['drift', 'supply', 'raise'].includes(kind) ? { events: 'events' } : {},
    })),
    ...moreCells(row),
  ];
  const data = Object.keys(files).map((name) => ({ key: name, name, size: 1, hash: '' }));
  const head = { format: 'between-visits-notebook', version: 1, title: 'Fleet', as_of: '2026-03-31', settings: {} };
  return { text: JSON.stringify({ ...head, data, cells }), cells, files };
}

/** The sample campus with the kinds that its notebook leaves out. */
function sampleNotebook(): Notebook {
  const saved = JSON.parse(readFileSync(join(SAMPLE, 'campus-review.json'), 'utf8')) as {
    readonly cells: readonly Cell[];
    readonly data: readonly { readonly name: string }[];
  };
  const row = { unit: 'EMB-1', taken_at: '2024-10-01', fire: 'high', state: 'as_found', fuel: '' };
  const known = new Set(saved.cells.map(({ kind }) => kind));
  const cells = [...saved.cells, ...moreCells(row).filter(({ kind }) => !known.has(kind))];
  const files = Object.fromEntries(saved.data.map(({ name }) => [name, readFileSync(join(SAMPLE, name), 'latin1')]));
  return { text: JSON.stringify({ ...saved, cells }), cells, files };
}

const NOTEBOOKS = { [`a fleet of ${UNITS} units`]: fleetNotebook(), 'the sample campus': sampleNotebook() };
let page = '';
beforeAll(() => {
  page = buildPage();
  Object.values(NOTEBOOKS).forEach(({ text, files }, at) => {
    mkdirSync(homeOf(at), { recursive: true });
    writeFileSync(join(homeOf(at), 'notebook.json'), text);
    for (const [name, content] of Object.entries(files)) writeFileSync(join(homeOf(at), name), content, 'latin1');
  });
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const homeOf = (at: number): string => join(folder, String(at));

function onCommandLine(at: number, helpers: string): Record<string, string> {
  const out = `out-${helpers}`;
  const done = spawnSync(
    process.execPath,
    [join(ROOT, 'dist/cli/main.js'), 'calculate', 'notebook.json', '--out', out],
    { cwd: homeOf(at), encoding: 'utf8', env: { ...process.env, BETWEEN_VISITS_HELPERS: helpers } },
  );
  expect([done.status, done.stderr]).toEqual([0, '']);
  const names = readdirSync(join(homeOf(at), out));
  const hashes = names.map((name) => [name, hashOf(readFileSync(join(homeOf(at), out, name)))]);
  rmSync(join(homeOf(at), out), { recursive: true });
  return Object.fromEntries(hashes);
}

describe.each(Object.entries(NOTEBOOKS).map(([name, notebook], at) => ({ name, notebook, at })))(
  'every file of every cell of $name has the same bytes',
  ({ notebook, at }) => {
    let alone: Record<string, string> = {};
    beforeAll(() => {
      alone = onCommandLine(at, '0');
    }, 300_000);

    test('there is a cell of every kind, and each that writes files has written', () => {
      expect(new Set(notebook.cells.map(({ kind }) => kind))).toEqual(new Set(catalogue.keys()));
      const writers = [...catalogue.values()].filter(({ files }) => files).length;
      expect(Object.keys(alone).length).toBeGreaterThan(writers);
    });

    test('with one processor, with two and with five', () => {
      expect(onCommandLine(at, '2')).toEqual(alone);
      expect(onCommandLine(at, '5')).toEqual(alone);
    });

    test('on the command line and in the page', async () => {
      const files = Object.fromEntries(
        Object.entries(notebook.files).map(([name, text]) => [name, Buffer.from(text, 'latin1').toString('base64')]),
      );
      expect(await calculateInBrowser(page, notebook.text, files)).toEqual(alone);
    });
  },
);
