import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT, sourceFiles } from './imports.ts';

/** What only commands print. */
const OF_COMMANDS = new Set(['command', 'usage', 'proposal', 'merge', 'two-notebooks', 'working']);
const SENTENCE = /export const (\w+)[\s\S]*?;\n(?=\n|export|const|\/|$)/g;

test('a sentence that the page and the report print names no option of a command', () => {
  const found = sourceFiles()
    .filter((file) => file.startsWith('shared/messages/') && !OF_COMMANDS.has(file.replace(/^.*\/|\.ts$/g, '')))
    .flatMap((file) =>
      [...readFileSync(join(ROOT, file), 'utf8').matchAll(SENTENCE)]
        .filter(([text, name]) => /--[a-z]/.test(text) && !name.endsWith('ByCommand'))
        .map(([, name]) => `${file}: ${name}`),
    );
  expect(found).toEqual([]);
});
