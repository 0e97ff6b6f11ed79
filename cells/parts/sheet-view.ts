import { html } from 'lit';
import type { CellView } from './view.ts';

/** The view of a kind without one of its own: its tables as sheets and its figures as pictures. */
export const sheetView: CellView = {
  render: (state) => html`${state.description?.tables.map(({ title }) => html`<h3>${title}</h3>`)}`,
};
