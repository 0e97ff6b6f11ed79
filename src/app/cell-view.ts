import type { TemplateResult } from 'lit';
import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';

/** What a strip hands to the view of its kind (the same shape as a view expects of its host). */
export interface StripHost {
  rows(cell: CellName, range: RowRange): Promise<RowPage>;
  lanes(cell: CellName, units: readonly string[]): Promise<readonly UnitLanes[]>;
  setParameter(cell: CellName, parameter: string, value: unknown): void;
  openFiles(cell: CellName, parameter: string): void;
  /** Adds data files to the notebook and to the cell's list of files. */
  addFiles(cell: CellName, parameter: string, files: readonly File[]): void;
}

/** How a kind is drawn below its answer and its sentence; main.ts brings the views of all kinds. */
export interface StripView {
  render(state: CellState, host: StripHost): TemplateResult;
}

export type StripViews = ReadonlyMap<string, () => Promise<StripView>>;
