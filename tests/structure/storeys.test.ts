import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importsOf, ROOT, sourceFiles } from './imports.ts';

const files = sourceFiles();
const edges = files.flatMap((file) => importsOf(file).map((target) => ({ file, target })));
const inside = (path: string, folder: string): boolean => path === folder || path.startsWith(`${folder}/`);

/** The library, and the only rooms that may import it. */
const HOMES: Readonly<Record<string, readonly string[]>> = {
  papaparse: ['shared/csv'],
  'simple-statistics': ['shared/statistics'],
  arquero: ['shared/table'],
  'vega-embed': ['cells/parts'],
  acorn: ['shared/formula'],
  'idb-keyval': ['src/storage'],
};

test('every package that a source file imports is named in package.json', () => {
  const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
    dependencies: Readonly<Record<string, string>>;
  };
  const packages = edges
    .map(({ target }) => target)
    .filter((target) => !/^(?:node:|shared\/|cells\/|src\/|sample-data\/|virtual:)/.test(target))
    .map((target) =>
      target
        .split('/')
        .slice(0, target.startsWith('@') ? 2 : 1)
        .join('/'),
    );
  expect([...new Set(packages)].filter((name) => !Object.hasOwn(dependencies, name))).toEqual([]);
});

describe('three storeys, imports run downward', () => {
  test('shared imports neither cells nor src', () => {
    expect(edges.filter(({ file, target }) => inside(file, 'shared') && /^(cells|src)\//.test(target))).toEqual([]);
  });

  test('a cell imports shared, its own folder and, in views, cells/parts; never another cell, never src', () => {
    const strangers = edges.filter(({ file, target }) => {
      if (!inside(file, 'cells') || !/^(cells|src)\//.test(target)) return false;
      const [, folder] = file.split('/');
      if (inside(target, `cells/${folder}`)) return false;
      return !(inside(target, 'cells/parts') && (file.endsWith('/view.ts') || file === 'cells/views.ts'));
    });
    expect(strangers).toEqual([]);
  });

  test('only the two entrances and the worker that owns the tables import cells', () => {
    const entrances = ['src/app/main.ts', 'src/cli/main.ts', 'src/app/table-worker.ts'];
    expect(
      edges.filter(({ file, target }) => inside(file, 'src') && inside(target, 'cells') && !entrances.includes(file)),
    ).toEqual([]);
  });

  test('the engine knows no notebook, no cell contract and no page', () => {
    expect(
      edges.filter(
        ({ file, target }) =>
          inside(file, 'src/engine') && (/^src\/(?!engine)/.test(target) || target === 'shared/cell.ts'),
      ),
    ).toEqual([]);
  });

  test('what the command line imports has no lit and no page', () => {
    const seen = new Set<string>();
    const visit = (file: string): void => {
      if (seen.has(file)) return;
      seen.add(file);
      for (const { target } of edges.filter((edge) => edge.file === file)) visit(target);
    };
    visit('src/cli/main.ts');
    for (const kind of readdirSync(join(ROOT, 'cells')))
      if (existsSync(join(ROOT, 'cells', kind, 'kind.ts'))) visit(`cells/${kind}/kind.ts`);
    expect([...seen].filter((path) => path === 'lit' || path.startsWith('lit/') || inside(path, 'src/app'))).toEqual(
      [],
    );
  });

  test.each(Object.entries(HOMES))('%s is imported in its own room only', (library, rooms) => {
    const strangers = edges.filter(
      ({ file, target }) =>
        (target === library || target.startsWith(`${library}/`)) && !rooms.some((room) => inside(file, room)),
    );
    expect(strangers).toEqual([]);
  });

  test('no file cycles, type imports included', () => {
    const done = new Set<string>();
    const cycles: string[] = [];
    const visit = (file: string, path: readonly string[]): void => {
      if (path.includes(file)) cycles.push([...path.slice(path.indexOf(file)), file].join(' -> '));
      else if (!done.has(file)) {
        for (const { target } of edges.filter((edge) => edge.file === file)) visit(target, [...path, file]);
        done.add(file);
      }
    };
    for (const file of files) visit(file, []);
    expect(cycles).toEqual([]);
  });

  test('every import of a file finds it', () => {
    const missing = edges.filter(
      ({ target }) => /^(shared|cells|src)\//.test(target) && !existsSync(join(ROOT, target)),
    );
    expect(missing).toEqual([]);
  });
});

describe('every cell folder is complete', () => {
  const folders = readdirSync(join(ROOT, 'cells'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== 'parts')
    .map((entry) => entry.name);
  test.each(folders)('%s', (folder) => {
    const missing = ['parameters.ts', 'compute.ts', 'kind.ts', 'view.ts', 'example.json', 'README.md'].filter(
      (name) => !existsSync(join(ROOT, 'cells', folder, name)),
    );
    expect(missing).toEqual([]);
  });
});

describe('the top level', () => {
  test('holds what the plan names and what tools demand, nothing else', () => {
    const allowed = [
      'README.md',
      'DEVELOPERS.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'vite.config.ts',
      'src',
      'cells',
      'sample-data',
      'tests',
      'shared',
      'node_modules',
      'dist',
      'out',
    ];
    expect(readdirSync(ROOT).filter((name) => !name.startsWith('.') && !allowed.includes(name))).toEqual([]);
  });
});
