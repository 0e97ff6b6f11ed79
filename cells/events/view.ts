import { html } from 'lit';
import { EVENT_VOCABULARY } from '../../shared/readings/event-vocabulary.ts';
import '../parts/accept-desk.ts';
import '../parts/cell-tables.ts';
import '../parts/column-desk.ts';
import type { CellView } from '../parts/view.ts';
import { toldEvents } from './told-events.ts';

/** Events that notes tell of, to be accepted or not, then the sheets. */
export const view: CellView = {
  render: (state, host) => html`<bv-accept-desk .cell=${state} .host=${host} .source=${toldEvents}></bv-accept-desk>
    <bv-columns .cell=${state} .host=${host} .vocabulary=${EVENT_VOCABULARY}></bv-columns>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
