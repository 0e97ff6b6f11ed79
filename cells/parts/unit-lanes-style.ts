import { css } from 'lit';

export const unitLanesStyle = css`
  .find {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 20px;
    align-items: center;
    margin-bottom: 12px;
  }
  input {
    font: inherit;
    color: var(--ink);
    background: var(--sheet);
    border: 2px solid var(--ink);
    border-radius: 0;
    padding: 4px 10px;
    width: 12ch;
    min-height: 34px;
  }
  :focus-visible {
    outline: 3px solid var(--act);
    outline-offset: 3px;
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(320px, 1fr));
    gap: 10px;
  }
  /* What is far from the screen is neither laid out nor painted. */
  li {
    content-visibility: auto;
    contain-intrinsic-size: auto 110px;
  }
  .unit {
    width: 100%;
    height: 100%;
    padding: 10px 12px;
    text-align: left;
    background: var(--sheet);
    border: 1px solid var(--rule-strong);
    border-left-width: 6px;
  }
  button.unit:hover:not(:disabled),
  .unit[aria-expanded='true'] {
    border-color: var(--act);
    background: var(--sheet-hover);
  }
  .unit b {
    display: block;
    margin-bottom: 4px;
  }
  svg {
    display: block;
    width: 100%;
    height: auto;
  }
  .large {
    background: var(--sheet);
    border-block: 2px solid var(--ink);
    padding: 12px 16px;
    margin-bottom: 14px;
  }
  .large h4 {
    margin: 0 0 6px;
    font-family: var(--stamped);
    font-size: 1.4rem;
  }
  .large span,
  .how {
    color: var(--ink-2);
    font-weight: 400;
    font-size: 0.88rem;
    font-family: var(--letters);
  }
  .how {
    max-width: 90ch;
  }
  @media print {
    li {
      content-visibility: visible;
    }
  }
  @media (max-width: 560px) {
    ul {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
