import { expect, test } from 'vitest';
import { foldLine } from '../../../src/cli/fold-line.ts';

test('a line is broken at spaces, what follows is indented', () => {
  expect(foldLine('  one two three four', 12, 4)).toEqual(['  one two', '    three', '    four']);
});

test('a number stays with its unit, and a gas with its temperature', () => {
  const lines = foldLine('q = 1.5 mol/MJ × enthalpy_rise("O2", 43.3 °C) + 2 %', 34, 2);
  expect(lines).toEqual(['q = 1.5 mol/MJ ×', '  enthalpy_rise("O2", 43.3 °C) +', '  2 %']);
});

test('nothing is lost, and a word longer than a line is left whole', () => {
  const text = 'a verylongwordthatfitsnowhere b 5 % c';
  expect(
    foldLine(text, 10, 2)
      .map((line) => line.trim())
      .join(' '),
  ).toBe(text);
});
