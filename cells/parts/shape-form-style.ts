import { css } from 'lit';

/** A file's columns as a ruled form: the head as written on the left, what it is taken for beside it. */
export const shapeFormStyle = css`
  :host { display: block; }
  .wide { overflow-x: auto; }
  table { border-collapse: collapse; width: 100%; }
  th, td { text-align: left; padding: 4px 16px 4px 0; border-bottom: 1px solid var(--rule); vertical-align: middle; }
  thead th { font-size: 0.88rem; color: var(--ink-2); }
  tbody th { font-weight: 650; overflow-wrap: anywhere; min-width: 7em; }
  .value { font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
  .why { color: var(--ink-2); font-size: 0.92rem; }
  .unread th, .unread .value { color: var(--ink-2); font-weight: 400; }
  .sure { white-space: nowrap; }
  .doubt .sure { font-weight: 700; border-bottom: 3px solid var(--warning); }
  .is { display: flex; flex-wrap: wrap; gap: 4px 8px; align-items: center; }
  select, input { font: inherit; color: inherit; background: var(--sheet); border: 2px solid var(--ink); min-height: 36px; padding: 2px 8px; max-width: 17em; box-sizing: border-box; }
  .changed select { border-color: var(--act); border-left-width: 8px; }
  select:focus-visible, input:focus-visible { outline: 3px solid var(--act); outline-offset: 2px; }
  footer { display: flex; flex-wrap: wrap; gap: 8px 20px; align-items: center; padding: 10px 0 4px; }
  @media (max-width: 640px) {
    thead { display: none; }
    tr { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 2px 12px; padding: 8px 0; border-bottom: 1px solid var(--rule); }
    th, td { border: 0; padding: 0; }
    .is-cell, .why { grid-column: 1 / -1; }
    .sure { grid-row: 1; grid-column: 2; }
    .value { grid-column: 1 / -1; }
  }
`;
