import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fingerprint } from '../../../src/engine/fingerprint.ts';

describe('a fingerprint goes by content', () => {
  test('equal content of any shape, equal name', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        expect(fingerprint(structuredClone(value))).toBe(fingerprint(value));
      }),
      { seed: 1, numRuns: 300 },
    );
    expect(fingerprint({ a: 1, b: 2 })).toBe(fingerprint({ b: 2, a: 1 }));
    expect(fingerprint(new Float64Array([1, Number.NaN]))).toBe(fingerprint(new Float64Array([1, Number.NaN])));
    expect(fingerprint(new Float64Array([9, 1, 2]).subarray(1))).toBe(fingerprint(new Float64Array([1, 2])));
    expect(fingerprint(new Uint8Array([9, 1, 2, 3, 4, 5]).subarray(1))).toBe(
      fingerprint(new Uint8Array([1, 2, 3, 4, 5])),
    );
  });

  test.each<[unknown, unknown]>([
    [0, ''],
    [null, undefined],
    [
      [1, 2],
      [2, 1],
    ],
    [
      ['ab', 'c'],
      ['a', 'bc'],
    ],
    [{ a: [] }, { a: {} }],
    [new Float64Array([1, 2]), new Float64Array([2, 1])],
    [new Float64Array(3), new Float64Array(4)],
    [new Int32Array([1]), new Float64Array([1])],
    [new Float64Array([1, 2, 3]), new Float64Array([-1, -2, 3])],
    [new Int8Array([1, 0, 0]), new Int8Array([0, 1, 0])],
    [new Map([['a', 1]]), new Map([['a', 2]])],
  ])('%j and %j differ', (one, other) => {
    expect(fingerprint(one)).not.toBe(fingerprint(other));
  });

  test('a hundred thousand close neighbors have as many names', () => {
    const names = new Set<string>();
    const values = new Float64Array(4);
    for (let i = 0; i < 1_000_000; i++) {
      values[i % 4] = (i % 1000) + i / 4096;
      if (i % 10 === 0) names.add(fingerprint(Float64Array.from(values)));
    }
    expect(names.size).toBe(100_000);
  });
});
