import { describe, expect, test } from 'vitest';
import { makeSample } from '../../sample-data/make-sample.ts';
import { CAMPUS } from '../../sample-data/making/campus.ts';

const FILES = makeSample();
const text = (name: string): string => new TextDecoder().decode(FILES.get(name));

describe('the campus', () => {
  test('has 26 units in 9 buildings, one of two fuels, one of a single stage', () => {
    expect(new Set(CAMPUS.map(({ unit }) => unit)).size).toBe(26);
    expect(new Set(CAMPUS.map(({ building }) => building)).size).toBe(9);
    expect(CAMPUS.filter(({ fuels }) => fuels.length === 2).map(({ unit }) => unit)).toEqual(['FER-1']);
    expect(CAMPUS.filter(({ firing }) => firing === 'single').map(({ unit }) => unit)).toEqual(['DRU-3']);
  });

  test('has one unit that was replaced under its old id, told by the events and by a second register row', () => {
    expect(text('events.csv')).toContain('HUT-2,2021-07-14,replaced,');
    expect(text('register.csv').match(/^HUT-2,natural_gas,(2021-07-14)?,/gm)).toHaveLength(2);
  });
});

describe('the faults that were put in', () => {
  test.each([
    ['readings-crew-one.csv', /^HUT-9,/gm, 1],
    ['readings-crew-one.csv', /,2027-03-04T/gm, 1],
    ['readings-crew-one.csv', /,5\.x,/gm, 1],
    ['readings-crew-two.csv', /;31\.11\.2022;/gm, 1],
    ['readings-crew-two.csv', /;3,,4;/gm, 1],
    ['readings-crew-two.csv', /;>4000;/gm, 1],
  ])('%s holds %s', (name, pattern, times) => {
    expect(text(name).match(pattern)).toHaveLength(times);
  });

  test('the high CO of DRU-2 is its last word at high fire', () => {
    const rows = text('readings-crew-one.csv')
      .split('\n')
      .filter((line) => line.startsWith('DRU-2,') && line.includes(',high,'));
    expect(rows.at(-1)?.split(',')[13]).toBe('460');
  });
});
