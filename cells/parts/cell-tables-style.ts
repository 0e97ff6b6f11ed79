import { css } from 'lit';

export const cellTablesStyle = css`
  .names {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 26px;
    margin-bottom: 6px;
  }
  button {
    all: unset;
    cursor: pointer;
    padding: 8px 0 6px;
    min-height: 28px;
    color: var(--ink-2);
    border-bottom: 4px solid transparent;
  }
  button[aria-pressed='true'] {
    color: var(--ink);
    font-weight: 650;
    border-bottom-color: var(--act);
  }
  button:hover {
    color: var(--ink);
    border-bottom-color: var(--rule-strong);
  }
  button:focus-visible {
    outline: 3px solid var(--act);
    outline-offset: 2px;
  }
  .count {
    font-variant-numeric: tabular-nums;
    font-weight: 400;
  }
`;
