import type { CellState } from '../../../shared/cell-state.ts';

/**
 * The drawn flow: a knot for each cell, one below the other in the notebook's order; one pipe from each cell down to
 * the cells that read it, with a branch into each. Pipes that run side by side get lanes of their own, counted from
 * the knots outward.
 *
 *      lanes   knots
 *      2   1
 *          .---o register
 *      .---|---o readings
 *      |   '---o
 *      '-------o
 */
export interface FlowKnot {
  readonly cell: CellState;
  readonly y: number;
  /** Where its inputs enter, the first and the last; undefined where it reads nothing. */
  readonly entries: readonly [number, number] | undefined;
}

export interface FlowPipe {
  readonly from: string;
  /** Rows that the pipe carries; 0 where the cell has no result. */
  readonly rows: number;
  readonly lane: number;
  readonly startY: number;
  readonly branches: readonly { readonly to: string; readonly y: number }[];
}

export interface Flow {
  readonly knots: readonly FlowKnot[];
  readonly pipes: readonly FlowPipe[];
  readonly lanes: number;
  readonly height: number;
}

/** Branches into one knot stand this far apart. */
const BRANCH_STEP_PX = 11;

/** Rows of a cell's first result table: what a reader gets from it. */
export function mainRows(cell: CellState): number {
  const first = cell.description?.tables[0]?.table;
  if (first !== undefined && cell.rows[first] !== undefined) return cell.rows[first];
  return Math.max(0, ...Object.values(cell.rows));
}

/** Rows that left the flow at this cell, by what became of them. */
export function rowsLeaving(cell: CellState): { setAside: number; duplicates: number } {
  return { setAside: cell.rows['set-aside'] ?? 0, duplicates: cell.rows['duplicates'] ?? 0 };
}

export function layOutFlow(cells: readonly CellState[], rowPx: number): Flow {
  const place = new Map(cells.map((cell, index) => [cell.name, index]));
  const middle = (index: number): number => index * rowPx + rowPx / 2;
  const readers = (name: string): CellState[] => cells.filter(({ reads }) => reads.includes(name));
  /** Inputs of a knot enter in the order of their cells, spread about its middle. */
  const entry = (reader: CellState, from: string): number => {
    const inputs = [...new Set(reader.reads)]
      .filter((name) => place.has(name))
      .sort((a, b) => place.get(b)! - place.get(a)!);
    const spread = Math.min(BRANCH_STEP_PX, (rowPx - 16) / Math.max(1, inputs.length));
    return middle(place.get(reader.name)!) + (inputs.indexOf(from) - (inputs.length - 1) / 2) * spread - spread / 2;
  };
  const runs = cells
    .map((cell, index) => ({
      cell,
      startY: middle(index) + 7,
      branches: readers(cell.name).map((reader) => ({ to: reader.name, y: entry(reader, cell.name) })),
    }))
    .filter(({ branches }) => branches.length > 0);
  const lanes = assignLanes(
    runs.map(({ startY, branches }) => ({
      from: Math.min(startY, ...branches.map(({ y }) => y)),
      to: Math.max(startY, ...branches.map(({ y }) => y)),
    })),
  );
  return {
    knots: cells.map((cell, index) => ({ cell, y: middle(index), entries: extent(runs, cell.name) })),
    pipes: runs.map(({ cell, startY, branches }, index) => ({
      from: cell.name,
      rows: mainRows(cell),
      lane: lanes[index],
      startY,
      branches,
    })),
    lanes: lanes.length === 0 ? 0 : Math.max(...lanes) + 1,
    height: cells.length * rowPx,
  };
}

function extent(runs: readonly Pick<FlowPipe, 'branches'>[], name: string): [number, number] | undefined {
  const ys = runs.flatMap(({ branches }) => branches.filter(({ to }) => to === name).map(({ y }) => y));
  return ys.length === 0 ? undefined : [Math.min(...ys), Math.max(...ys)];
}

/** Short runs lie nearest to the knots; no two runs that overlap share a lane. */
function assignLanes(runs: readonly { from: number; to: number }[]): number[] {
  const lanes: { from: number; to: number }[][] = [];
  const result = new Array<number>(runs.length);
  const order = runs.map((_, index) => index).sort((a, b) => runs[a].to - runs[a].from - (runs[b].to - runs[b].from));
  for (const index of order) {
    const run = runs[index];
    let lane = lanes.findIndex((taken) => taken.every(({ from, to }) => to + 6 < run.from || run.to + 6 < from));
    if (lane < 0) lane = lanes.push([]) - 1;
    lanes[lane].push(run);
    result[index] = lane;
  }
  return result;
}

/** Wall of the drawn pipe in px: more rows, a wider pipe. */
export function pipeWidth(rows: number): number {
  return rows <= 0 ? 1.5 : Math.min(4, 1.5 + 0.4 * Math.log10(rows));
}
