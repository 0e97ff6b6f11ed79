import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../cells/catalogue.ts';
import { openNotebook } from '../../src/cli/calculate.ts';
import { Session } from '../../src/notebook/session.ts';

const SAMPLE = join(import.meta.dirname, '../../sample-data');
const RUNS = 9;
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

async function sample(): Promise<Session> {
  const { document, files } = await openNotebook(SAMPLE, 'campus-review.json');
  const session = new Session(catalogue);
  session.open(document, files);
  await session.calculate();
  return session;
}

/** Milliseconds from the edit to the finished states, each time with a value that was not there before. */
async function timesOf(
  session: Session,
  cell: string,
  parameter: string,
  value: (run: number) => unknown,
): Promise<number[]> {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const began = performance.now();
    const edited = session.setParameter(cell, parameter, value(run));
    expect(edited.status).toBe('value');
    await session.calculate();
    session.states();
    times.push(performance.now() - began);
  }
  return times;
}

describe('a change of one blank on the sample campus', () => {
  test.each<[string, string, (run: number) => unknown]>([
    ['raise', 'leastChance', (run) => 0.4 + run / 100],
    ['drift', 'horizonDays', (run) => 300 + run],
    ['supply', 'lookAheadYears', (run) => 2 + run / 10],
  ])('%s %s', async (cell, parameter, value) => {
    const session = await sample();
    const times = await timesOf(session, cell, parameter, value);
    console.log(
      `${cell}.${parameter}: median ${median(times).toFixed(0)} ms, worst ${Math.max(...times).toFixed(0)} ms`,
    );
    const began = performance.now();
    session.undo();
    await session.calculate();
    console.log(`undone in ${(performance.now() - began).toFixed(1)} ms; ${session.why('raise')}`);
    expect(median(times)).toBeLessThan(100);
  });
});
