import { describe, expect, test } from 'vitest';
import type { CellState } from '../../../../shared/cell-state.ts';
import { layOutFlow, mainRows, pipeWidth, rowsLeaving } from '../../../../src/app/flow/lay-out-flow.ts';

const cell = (name: string, reads: readonly string[] = [], rows: Record<string, number> = {}): CellState => ({
  name,
  kind: name,
  title: name,
  parameters: {},
  sentence: [],
  details: [],
  reads,
  phase: 'done',
  progress: 1,
  description: {
    answer: '',
    tables: Object.keys(rows).map((table) => ({ table, title: table, columns: [] })),
    figures: [],
    remarks: [],
  },
  stale: false,
  message: '',
  question: undefined,
  waitsFor: [],
  rows,
  why: '',
  version: 1,
});

//  register --> readings --> derive --> drift
//        '----------------------'---------^
const CELLS = [
  cell('register', [], { units: 26 }),
  cell('readings', ['register'], { accepted: 1204, 'set-aside': 17, duplicates: 3 }),
  cell('derive', ['readings', 'register'], { derived: 1204 }),
  cell('drift', ['derive', 'register', 'missing']),
];

describe('the drawn flow', () => {
  const flow = layOutFlow(CELLS, 80);

  test('has a knot for each cell, in the order of the notebook', () => {
    expect(flow.knots.map(({ cell: { name }, y }) => [name, y])).toEqual([
      ['register', 40],
      ['readings', 120],
      ['derive', 200],
      ['drift', 280],
    ]);
  });

  test('has a thread from each cell to each of its readers, and none to a cell that is not there', () => {
    expect(flow.pipes.map(({ from, branches }) => [from, branches.map(({ to }) => to)])).toEqual([
      ['register', ['readings', 'derive', 'drift']],
      ['readings', ['derive']],
      ['derive', ['drift']],
    ]);
    expect(flow.pipes.map(({ rows }) => rows)).toEqual([26, 1204, 1204]);
  });

  test('pipes that run side by side have lanes of their own', () => {
    for (const a of flow.pipes)
      for (const b of flow.pipes) {
        if (a === b || a.lane !== b.lane) continue;
        const end = (pipe: typeof a): number => Math.max(...pipe.branches.map(({ y }) => y));
        expect(end(a) < b.startY || end(b) < a.startY).toBe(true);
      }
  });

  test('rows that leave are seen to leave', () => {
    expect(rowsLeaving(CELLS[1])).toEqual({ setAside: 17, duplicates: 3 });
    expect(rowsLeaving(CELLS[2])).toEqual({ setAside: 0, duplicates: 0 });
    expect(mainRows(CELLS[1])).toBe(1204);
  });

  test('a cell that reads itself or a cycle does not break the drawing', () => {
    expect(layOutFlow([cell('a', ['b', 'a']), cell('b', ['a'])], 80).knots).toHaveLength(2);
    expect(layOutFlow([], 80)).toMatchObject({ lanes: 0, height: 0 });
  });

  test('more rows, a wider pipe, up to a bound', () => {
    expect(pipeWidth(0)).toBeLessThan(pipeWidth(100));
    expect(pipeWidth(100)).toBeLessThan(pipeWidth(100_000));
    expect(pipeWidth(1e12)).toBeLessThanOrEqual(7);
  });
});
