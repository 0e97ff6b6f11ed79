import type { TemplateResult } from 'lit';
import type { CellState } from '../../shared/cell-state.ts';
import type { ViewHost } from '../../shared/view-host.ts';

/** How a kind of cell is drawn below its answer and its sentence. */
export interface CellView {
  render(state: CellState, host: ViewHost): TemplateResult;
}
