import { css } from 'lit';

/** What is folded under a unit: its line is pressed like a button. */
export const foldStyle = css`
  summary {
    cursor: pointer;
    width: fit-content;
    margin-bottom: 10px;
  }
  summary:focus-visible {
    outline: 3px solid var(--act);
    outline-offset: 3px;
  }
`;
