import type { FleetProgram } from './fleet-program.ts';

/** The program of the units from `from` up to `to` alone, in arrays of its own; shared columns keep their numbers. */
export function sliceProgram(program: FleetProgram, from: number, to: number): FleetProgram {
  const { unitSteps, unitLanes, unitColumns, shared } = program;
  const [steps, stepsEnd] = [unitSteps[from], unitSteps[to]];
  const begins = (starts: Int32Array): Int32Array => starts.slice(from, to + 1).map((start) => start - starts[from]);
  return {
    units: to - from,
    unitSteps: begins(unitSteps),
    unitLanes: begins(unitLanes),
    unitColumns: begins(unitColumns),
    columns: program.columns.slice(unitColumns[from], unitColumns[to]),
    laneClass: program.laneClass.slice(unitLanes[from], unitLanes[to]),
    laneOffset: program.laneOffset.slice(unitLanes[from], unitLanes[to]),
    kind: program.kind.slice(steps, stepsEnd),
    lane: program.lane.slice(steps, stepsEnd),
    value: program.value.slice(steps, stepsEnd),
    extra: program.extra.slice(steps, stepsEnd),
    cell: program.cell.slice(steps, stepsEnd),
    biasColumn: program.biasColumn.slice(steps, stepsEnd),
    offsetColumn: program.offsetColumn.slice(steps, stepsEnd),
    shared,
  };
}
