import { css } from 'lit';

/** The corrections of a cell as a ruled ledger. */
export const correctionsListStyle = css`
  :host {
    max-width: none;
    margin: 0 0 20px;
  }
  ul {
    list-style: none;
    margin: 6px 0 0;
    padding: 0;
    border-top: 2px solid var(--ink);
  }
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 4px 24px;
    align-items: center;
    padding: 10px 0;
    border-bottom: 1px solid var(--rule-strong);
  }
  li form {
    grid-column: 1 / -1;
  }
  li p {
    margin: 0;
  }
  .what {
    font-weight: 650;
    overflow-wrap: anywhere;
  }
  .before {
    font-weight: 400;
  }
  .signed,
  .fate {
    font-size: 0.9rem;
  }
  .fate {
    color: var(--ink-2);
  }
  [data-status='lifted'] .what,
  [data-status='overruled'] .what {
    font-weight: 400;
    text-decoration: line-through;
  }
  [data-status='lost'] {
    border-left: 8px solid var(--warning);
    padding-left: 14px;
  }
  [data-status='lost'] .fate {
    color: var(--ink);
    font-weight: 650;
  }
  .quiet {
    padding: 0;
  }
  @media print {
    :host {
      display: block;
    }
    .acts {
      display: none;
    }
  }
  @media (max-width: 700px) {
    li {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
