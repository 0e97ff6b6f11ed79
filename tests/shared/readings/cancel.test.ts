import { expect, test } from 'vitest';
import { kind } from '../../../cells/readings/kind.ts';
import type { SourceFile } from '../../../shared/cell.ts';
import { contextOf } from './file-of.ts';

const HEAD = 'unit,taken_at,fire,state,o2_pct,co_ppm\n';
const ROWS = 'B-01,2024-03-13T10:15,high,as_found,4.6,28\n'.repeat(4000);

test('an import that is called off reads no further and lets the file go', async () => {
  let [pieces, closed] = [0, 0];
  const file: SourceFile = {
    name: 'endless.csv',
    size: 1e9,
    hash: '',
    open: async function* () {
      try {
        yield new TextEncoder().encode(HEAD + ROWS);
        for (;;) {
          pieces++;
          yield new TextEncoder().encode(ROWS);
        }
      } finally {
        closed++;
      }
    },
  };
  const stop = new AbortController();
  const parameters = kind.readParameters({ files: [file.name], register: '' });
  if (parameters.status !== 'value') throw new Error('parameters');
  const context = {
    ...contextOf([file], '2026-12-31'),
    signal: stop.signal,
    pause: async () => stop.signal.throwIfAborted(),
    progress: () => {
      if (pieces === 5) stop.abort();
    },
  };
  await expect(kind.compute(parameters.value, new Map(), context, undefined)).rejects.toThrow(/abort/i);
  // One look for the plan, one reading: both are closed, and no piece came after the end was told.
  expect([pieces, closed]).toEqual([5, 2]);
});
