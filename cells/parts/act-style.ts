import { css } from 'lit';

/** The buttons inside views, which the page's own style sheet does not reach: as large as a gloved finger, ruled in ink. */
export const actStyle = css`
  button {
    font: inherit;
    font-size: 0.9rem;
    min-height: 44px;
    padding: 8px 16px;
    border: 2px solid var(--ink, #14202a);
    background: transparent;
    color: var(--ink, #14202a);
    cursor: pointer;
  }
  button:hover:not(:disabled) {
    background: var(--act-tint, #dcebf5);
  }
  button:disabled {
    color: var(--rule-strong);
    border-color: var(--rule);
    cursor: default;
  }
  button:focus-visible {
    outline: 3px solid var(--act, #00578a);
    outline-offset: 2px;
  }
`;
