/**
 * First-order uncertainties against another package, the Python package `uncertainties`, which differentiates in its own
 * way. Its values stand in reference/uncertainty-python.json with their version and date, made by the script beside it.
 * The formulas are published ones: air-free CO (trade school example), Siegert's loss (1. BImSchV), and chains of them.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { calculate, evaluateFormulas } from '../shared/formula/evaluate-formula.ts';

type Pair = readonly [value: number, sd: number];
const REFERENCE = JSON.parse(
  readFileSync(join(import.meta.dirname, 'reference/uncertainty-python.json'), 'utf8'),
) as Readonly<Record<'air_free' | 'siegert' | 'chained' | 'saving', Pair>> & { readonly made: string };

const INPUTS = {
  o2: { unit: '1', values: [5], sd: 0.17 },
  co: { unit: '1', values: [87], sd: 12 },
  flue: { unit: '1', values: [200], sd: 1.5 },
  air: { unit: '1', values: [20], sd: 1 },
};

/** Both work in double precision; what differs is the order of operations. */
function expectSame(
  found: { readonly values: readonly number[]; readonly sd: readonly number[] },
  [value, sd]: Pair,
): void {
  expect(found.values[0] / value).toBeCloseTo(1, 11);
  expect(found.sd[0] / sd).toBeCloseTo(1, 10);
}

test('the reference names the package, its version and the day', () => {
  expect(REFERENCE.made).toMatch(/^Python [\d.]+ uncertainties [\d.]+ \d{4}-\d{2}-\d{2}$/);
});

test('air-free CO, 87 ppm at 5 % O2', () => {
  expectSame(calculate('co * 20.9 / (20.9 - o2)', INPUTS), REFERENCE.air_free);
});

test('flue loss by Siegert’s formula', () => {
  expectSame(calculate('(flue - air) * (0.66 / (21 - o2) + 0.009)', INPUTS), REFERENCE.siegert);
});

test('one O2 that enters by several ways through a chain of formulas', () => {
  const found = evaluateFormulas(
    {
      excess: '0.9 * o2 / (20.95 - o2)',
      air_free: 'co * 20.9 / (20.9 - o2)',
      own: '(1 + excess) * air_free / (1 + sqrt(excess)) - exp(0 - excess) * o2',
    },
    INPUTS,
  );
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  expectSame(found.value, REFERENCE.chained);
});

test('a saving of two readings that share the bias of one analyzer', () => {
  const found = evaluateFormulas(
    {
      before: '(220 - 20) * (0.66 / (21 - (found + bias)) + 0.009)',
      after: '(210 - 20) * (0.66 / (21 - (left + bias)) + 0.009)',
      own: '1 - (100 - before) / (100 - after)',
    },
    {
      found: { unit: '1', values: [7], sd: 0.1 },
      left: { unit: '1', values: [4], sd: 0.1 },
      bias: { unit: '1', values: [0], sd: 0.13 },
    },
  );
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  expectSame(found.value, REFERENCE.saving);
});
