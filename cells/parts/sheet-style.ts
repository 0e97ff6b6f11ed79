import { css } from 'lit';

/** The sheet's own look: a ruled report form, no boxes around cells; colours come from the page's tokens. */
export const sheetStyle = css`
  :host {
    display: block;
    --row: 38px;
    font-variant-numeric: tabular-nums lining-nums;
  }
  .scroll {
    overflow: auto;
    position: relative;
    background: var(--sheet, #fff);
    border-block: 2px solid var(--ink, #14202a);
    scrollbar-color: var(--rule-strong, #6b7a85) transparent;
  }
  .rail {
    position: relative;
  }
  .head,
  .row {
    display: grid;
    grid-template-columns: var(--columns);
  }
  .head {
    height: var(--head);
    box-sizing: border-box;
    position: sticky;
    top: 0;
    z-index: 3;
    background: var(--sheet-head, #e6ebee);
    border-bottom: 1px solid var(--rule-strong, #6b7a85);
  }
  .head > div {
    padding: 0;
    background: inherit;
  }
  .head button {
    all: unset;
    box-sizing: border-box;
    width: 100%;
    height: 100%;
    padding: 6px 11px;
    display: flex;
    flex-direction: column;
    justify-content: flex-end;
    cursor: pointer;
    font-size: 0.8em;
    line-height: 1.2;
    font-weight: 650;
    color: var(--ink, #14202a);
  }
  .head .number button {
    text-align: right;
    align-items: flex-end;
  }
  .unit {
    font-weight: 400;
    color: var(--ink-2, #45535e);
  }
  .order {
    color: var(--act, #0b5c8f);
    font-weight: 700;
  }
  .window {
    position: sticky;
    overflow: clip;
  }
  .row {
    height: var(--row);
    box-sizing: border-box;
    border-bottom: 1px solid var(--rule, #cfd7dc);
  }
  .row:nth-child(even) {
    background: var(--sheet-band, #f5f7f8);
  }
  .row:nth-child(odd) {
    background: var(--sheet, #fff);
  }
  .row > div {
    line-height: calc(var(--row) - 1px);
    padding: 0 11px;
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
    background: inherit;
  }
  .row .number {
    text-align: right;
  }
  .row .unknown {
    color: var(--ink-2, #45535e);
  }
  .row .worked {
    cursor: pointer;
    text-decoration: underline dotted var(--rule-strong, #6b7a85) 2px;
    text-underline-offset: 5px;
  }
  .row .worked:hover {
    text-decoration-color: var(--act, #0b5c8f);
    text-decoration-style: solid;
  }
  .held {
    position: sticky;
    left: 0;
    z-index: 2;
    font-weight: 650;
    border-right: 1px solid var(--rule-strong, #6b7a85);
  }
  .row:hover > div {
    background: var(--sheet-hover, #e4eef5);
  }
  .here {
    outline: 3px solid var(--act, #0b5c8f);
    outline-offset: -3px;
  }
  [tabindex]:focus-visible,
  button:focus-visible {
    outline: 3px solid var(--act, #0b5c8f);
    outline-offset: -3px;
  }
  .note {
    margin: 8px 0 0;
    font-size: 0.82em;
    color: var(--ink-2, #45535e);
  }
  @media print {
    .scroll {
      overflow: visible;
    }
    .rail {
      height: auto !important;
      width: auto !important;
    }
    .head,
    .window,
    .held {
      position: static;
      height: auto !important;
      overflow: visible;
    }
    .head,
    .row {
      font-size: 8pt;
      grid-template-columns: none;
      grid-auto-flow: column;
      grid-auto-columns: 1fr;
    }
    .row,
    .row > div {
      height: auto;
      line-height: 1.3;
      white-space: normal;
      padding: 2px 4px;
    }
    .row .worked {
      text-decoration: none;
    }
    .head button {
      min-height: 0;
      padding: 2px 4px;
    }
  }
`;
