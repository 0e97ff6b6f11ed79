import { type FleetProgram, STEP } from './fleet-program.ts';
import type { WrittenProgram } from './write-program.ts';

/** A change of a lane's rate before a step. */
export interface Bend {
  readonly step: number;
  /** Place of the lane within its unit. */
  readonly lane: number;
  readonly size: number;
}

type Stepped = Pick<WrittenProgram, 'program' | 'stepDay'>;

/** The same steps with those that let rates go among them; `bends` in any order. */
export function insertBends({ program, stepDay }: Stepped, bends: readonly Bend[]): Stepped {
  const sorted = [...bends].sort((a, b) => a.step - b.step || a.lane - b.lane);
  const at = sorted.map(({ step }) => step);
  const each = (put: (bend: Bend) => number): number[] => sorted.map(put);
  const none = each(() => -1);
  const zero = each(() => 0);
  const { unitSteps } = program;
  const shifted: FleetProgram = {
    ...program,
    unitSteps: unitSteps.map((step) => step + countBelow(at, step)),
    kind: withPut(
      program.kind,
      at,
      each(() => STEP.bend),
    ),
    lane: withPut(
      program.lane,
      at,
      each(({ lane }) => lane),
    ),
    value: withPut(
      program.value,
      at,
      each(({ size }) => size),
    ),
    extra: withPut(program.extra, at, zero),
    cell: withPut(program.cell, at, zero),
    biasColumn: withPut(program.biasColumn, at, none),
    offsetColumn: withPut(program.offsetColumn, at, none),
  };
  return {
    program: shifted,
    stepDay: withPut(
      stepDay,
      at,
      each(({ step }) => stepDay[step]),
    ),
  };
}

type Columnar = Uint8Array | Int32Array | Float64Array;

/** A copy with values put in before the given places, ascending. */
function withPut<A extends Columnar>(values: A, at: readonly number[], put: readonly number[]): A {
  const Kind = values.constructor as new (length: number) => A;
  const all = new Kind(values.length + at.length);
  let from = 0;
  at.forEach((place, i) => {
    all.set(values.subarray(from, place), from + i);
    all[place + i] = put[i];
    from = place;
  });
  all.set(values.subarray(from), from + at.length);
  return all;
}

/** How many of some ascending numbers are below one. */
function countBelow(ascending: readonly number[], limit: number): number {
  let [low, high] = [0, ascending.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle] < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
