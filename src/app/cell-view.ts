import type { TemplateResult } from 'lit';
import type { CellName } from '../../shared/cell.ts';
import type { CellState } from '../../shared/cell-state.ts';
import type { ViewHost } from '../../shared/view-host.ts';

/** What a strip asks of the page beside what its view does. */
export interface StripHost extends ViewHost {
  /** Adds data files to the notebook and to the cell's list of files. */
  addFiles(cell: CellName, parameter: string, files: readonly File[]): void;
}

/** How a kind is drawn below its answer and its sentence; main.ts brings the views of all kinds. */
export interface StripView {
  render(state: CellState, host: ViewHost): TemplateResult;
}

export type StripViews = ReadonlyMap<string, () => Promise<StripView>>;
