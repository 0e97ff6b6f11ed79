import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeDocument } from '../../src/notebook/write-document.ts';
import { sampleNotebook } from './sample-notebook.ts';

const PATH = join(import.meta.dirname, '..', '..', 'sample-data', 'campus-review.json');

test('sample-data/campus-review.json is the review of the sample files as they are', () => {
  const text = writeDocument(sampleNotebook());
  // WRITE_SAMPLE=1 npx vitest run tests/sample writes it anew.
  if (process.env['WRITE_SAMPLE'] === '1') writeFileSync(PATH, text);
  expect(readFileSync(PATH, 'utf8')).toBe(text);
});
