import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Expression } from '../../../shared/formula/expression.ts';
import { FormulaFault } from '../../../shared/formula/formula-fault.ts';
import { parseFormula } from '../../../shared/formula/parse-formula.ts';

/** The tree as a Lisp-like line, so that shapes can be read at a glance. */
function shape(part: Expression): string {
  switch (part.kind) {
    case 'number':
      return String(part.value);
    case 'text':
      return JSON.stringify(part.value);
    case 'name':
      return part.name;
    case 'unary':
      return `(${part.operator} ${shape(part.argument)})`;
    case 'binary':
      return `(${part.operator} ${shape(part.left)} ${shape(part.right)})`;
    case 'choice':
      return `(? ${shape(part.test)} ${shape(part.yes)} ${shape(part.no)})`;
    case 'call':
      return `${part.name}(${part.arguments.map(shape).join(' ')})`;
  }
}

describe('the grammar is that of ECMAScript', () => {
  test.each([
    ['1 + 2 * 3', '(+ 1 (* 2 3))'],
    ['(1 + 2) * 3', '(* (+ 1 2) 3)'],
    ['2 ** 3 ** 2', '(** 2 (** 3 2))'],
    ['a - b - c', '(- (- a b) c)'],
    ['7 % 4', '(% 7 4)'],
    ['-a + +b', '(+ (- a) (+ b))'],
    ['a > 3 && b <= 2 || !c', '(|| (&& (> a 3) (<= b 2)) (! c))'],
    ['a === b ? 1 : c !== d ? 2 : 3', '(? (== a b) 1 (? (!= c d) 2 3))'],
    ['min(a, 3e-2)', 'min(a 0.03)'],
    ['fuel.co2_max / 2', '(/ fuel.co2_max 2)'],
    ['fire == "high"', '(== fire "high")'],
  ])('%s', (formula, expected) => {
    expect(shape(parseFormula(formula))).toBe(expected);
  });
});

describe('what could run, reach out or change something is refused', () => {
  test.each([
    'a = 1',
    'a++',
    'delete a.b',
    'typeof a',
    'new Date()',
    'this',
    'a[0]',
    'a["b"]',
    'a?.b',
    'a?.()',
    'a.b.c',
    'a.b()',
    '(() => 1)()',
    'x => x',
    'function f() {}',
    'class A {}',
    '`text`',
    'f`text`',
    'import("fs")',
    'import.meta',
    '[1, 2]',
    '{a: 1}',
    '/a/',
    '1n',
    'a, b',
    'a ?? b',
    'a & b',
    'a | b',
    'a ^ b',
    '~a',
    'a << 1',
    'a >>> 1',
    '"b" in a',
    'a instanceof b',
    '...a',
    'f(...a)',
    'null',
    'true',
    'await a',
    'super.a',
    'new.target',
    '#a',
    'a; b',
    'a)',
    '1 +',
    '',
    '   ',
  ])('%s', (formula) => {
    expect(() => parseFormula(formula)).toThrow(FormulaFault);
  });

  test('a formula of 10,000 characters, a deep one, and one of very many parts are refused before they cost anything', () => {
    expect(() => parseFormula('1+'.repeat(5000))).toThrow(/10000 characters/);
    expect(() => parseFormula(`${'('.repeat(900)}1${')'.repeat(900)}`)).toThrow(/nests deeper|cannot be read/);
    expect(() => parseFormula(`${'-'.repeat(3)}${'- '.repeat(100)}1`)).toThrow(FormulaFault);
    expect(() => parseFormula(Array.from({ length: 700 }, () => '1').join('+'))).toThrow(/parts|deeper/);
  });
});

test('whatever is typed ends in a tree or a FormulaFault that points inside the text', () => {
  const piece = fc.constantFrom(
    'a',
    '1',
    '+',
    '(',
    ')',
    '?',
    ':',
    '"',
    '.',
    ',',
    '**',
    '%',
    '!',
    '\\',
    '\n',
    '€',
    'min(',
    '//',
    '/*',
    '`',
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ maxLength: 60 }),
        fc.array(piece, { maxLength: 20 }).map((all) => all.join('')),
      ),
      (text) => {
        try {
          parseFormula(text);
        } catch (fault) {
          expect(fault).toBeInstanceOf(FormulaFault);
          const { span } = fault as FormulaFault;
          expect(span.from).toBeGreaterThanOrEqual(0);
          expect(span.from).toBeLessThanOrEqual(text.length);
        }
      },
    ),
    { seed: 4, numRuns: 2000 },
  );
});
