import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/raise/kind.ts';
import { judge, raisedExample, readRaised } from './judge.ts';

describe('the example: every tier, in order', () => {
  test('safety before open before supply before tolerance before data', async () => {
    const result = await raisedExample();
    expect(readRaised(result).map(({ unit, reason, tier }) => `${tier}: ${unit} ${reason}`)).toEqual([
      'safety: A-3 co_high',
      'safety: A-3 supply_over_maximum',
      'open: A-1 not_returned_to_service',
      'supply: A-1 supply_drop_growing',
      'tolerance: A-1 leaving_tolerance',
      'data: A-5 no_data',
      'data: A-4 no_data',
    ]);
    expect(result.answer).toBe('4 of 5 units raised: 1 safety, 1 open, 2 data.');
  });

  test('evidence is one sentence with its numbers, and no unknown number is printed', async () => {
    for (const { evidence, checkFirst } of readRaised(await raisedExample())) {
      for (const sentence of [evidence, checkFirst]) {
        expect(sentence).toMatch(/^[A-Z][^\n]+\.$/);
        expect(sentence).not.toMatch(/NaN|Infinity|undefined|unknown/);
      }
      expect(evidence).toMatch(/\d/);
    }
  });

  test('its lanes come from what drift and supply worked out', async () => {
    const [lanes] = kind.lanes?.(await raisedExample(), ['A-1']) ?? [];
    expect(lanes.place).toBe('Laundry');
    expect(lanes.lanes.map(({ fire, lower, upper }) => [fire, lower, upper])).toEqual([['high', 4, 6]]);
  });
});

describe('parameters and inputs', () => {
  test('a cell of another kind is named with what it lacks', async () => {
    await expect(judge({ drift: { unit: ['A'] } }, { supply: 'drift' })).rejects.toThrow(
      /raise: table supply of cell drift lacks unit, verdict; name a cell of the right kind/,
    );
  });

  test('nothing at all raises nothing', async () => {
    expect((await judge({})).answer).toBe('None of 0 units raised.');
  });
});
