import type { TemplateResult } from 'lit';
import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';

/** What a view may ask of the page around it. */
export interface ViewHost {
  rows(cell: CellName, range: RowRange): Promise<RowPage>;
  lanes(cell: CellName, units: readonly string[]): Promise<readonly UnitLanes[]>;
  setParameter(cell: CellName, parameter: string, value: unknown): void;
  /** Opens the user's files and hands them to the cell's list-of-files parameter. */
  openFiles(cell: CellName, parameter: string): void;
}

/** How a kind of cell is drawn below its answer and its sentence. */
export interface CellView {
  render(state: CellState, host: ViewHost): TemplateResult;
}
