import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { makeSample } from '../../sample-data/make-sample.ts';

const FOLDER = join(import.meta.dirname, '..', '..', 'sample-data');

describe('the sample campus in sample-data/', () => {
  const files = makeSample();

  // WRITE_SAMPLE=1 npx vitest run tests/sample writes the files anew.
  if (process.env['WRITE_SAMPLE'] === '1') for (const [name, bytes] of files) writeFileSync(join(FOLDER, name), bytes);

  test.each([...files.keys()])('%s is what the generator makes', (name) => {
    const path = join(FOLDER, name);
    expect(existsSync(path)).toBe(true);
    expect(Buffer.compare(readFileSync(path), files.get(name) ?? Buffer.alloc(0))).toBe(0);
  });
});
