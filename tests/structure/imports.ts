import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

export const ROOT = join(import.meta.dirname, '..', '..');

/** Source files of the three storeys, as paths from the root. */
export function sourceFiles(): string[] {
  return ['shared', 'cells', 'src'].flatMap((storey) =>
    readdirSync(join(ROOT, storey), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.ts'))
      .map((path) => `${storey}/${path.replaceAll('\\', '/')}`),
  );
}

const STATEMENT =
  /(?:^|[\n;])\s*(?:import|export)\s(?:[^'"`;]*?\sfrom\s)?\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;

/** What a file imports: paths from the root for files, names for packages. Type imports count. */
export function importsOf(file: string): string[] {
  const text = readFileSync(join(ROOT, file), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
  return [...text.matchAll(STATEMENT)].map(([, from, dynamic]) => {
    const target = (from ?? dynamic).split('?')[0];
    return target.startsWith('.') ? relative(ROOT, join(ROOT, dirname(file), target)) : target;
  });
}
