import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT, sourceFiles } from './imports.ts';

/** ECMAScript leaves the last bit of these open (ECMA-262, "The Math Object"); a square root and + - * / are exact. */
const OPEN =
  /\bMath\.(exp|expm1|log|log10|log1p|log2|pow|sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|tanh|asinh|acosh|atanh|cbrt|hypot)\b/;
/** A power too, but for squares, which every engine forms by one multiplication; a formula's text may hold any. */
const POWER = /\w\]?\)? \*\* (?!2\b)/;
const withoutTexts = (line: string): string => line.replace(/'[^']*'|`[^`]*`/g, "''");
/** Names of bits and bytes are whole numbers far below 2 ** 53. */
const isWhole = (line: string): boolean => /\b2 \*\* \d|\b2 \*\* i\b|\b10 \*\* power\b/.test(line);
/** Comments may name them; what the page's parts draw is rounded to a few digits. */
const isCode = (line: string): boolean => !/^\s*(\*|\/\/|\/\*)/.test(line);
const isCalculated = (file: string): boolean => /^(shared|cells)\//.test(file) && !file.startsWith('cells/parts/');

const isOpenPower = (line: string): boolean => POWER.test(withoutTexts(line)) && !isWhole(line);

test('figures are calculated by functions that give the same bits in every engine', () => {
  const strangers = sourceFiles()
    .filter(isCalculated)
    .flatMap((file) =>
      readFileSync(join(ROOT, file), 'utf8')
        .split('\n')
        .flatMap((line, at) => (isCode(line) && (OPEN.test(line) || isOpenPower(line)) ? [`${file}:${at + 1}`] : [])),
    );
  expect(strangers, 'use shared/quantities/elementary.ts').toEqual([]);
});
