import { css } from 'lit';

/** The list of raised units: a head a tier, cautions, and how many more there are. */
export const raisedStyle = css`
  :host {
    display: block;
  }
  .tier {
    margin: 0 0 30px;
  }
  .tier > header {
    display: flex;
    align-items: center;
    gap: 14px;
    margin-bottom: 8px;
  }
  .tier h3 {
    margin: 0;
    font-family: var(--stamped);
    font-size: 1.5rem;
    line-height: 1.1;
  }
  .tier .units {
    color: var(--ink-2);
  }
  .caution {
    margin: 0 0 14px;
    padding: 8px 16px;
    border: 3px solid var(--danger);
    font-weight: 650;
    font-size: 0.95rem;
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.15fr);
    gap: 4px 28px;
    align-items: center;
  }
  .caution p {
    margin: 0;
  }
  .caution p + p {
    font-weight: 400;
    font-size: 0.86rem;
  }
  .mark {
    flex: none;
  }
  .mark * {
    stroke: var(--ink);
    stroke-width: 2.5;
    stroke-linejoin: round;
  }
  .mark .danger {
    fill: var(--danger);
  }
  .mark .line {
    stroke: var(--sheet);
    stroke-width: 5;
    fill: none;
  }
  .mark .warning {
    fill: var(--warning);
  }
  .mark .gas {
    fill: var(--gas);
  }
  .mark .band {
    fill: var(--lane-band);
  }
  .mark .field {
    fill: var(--sheet);
    stroke-dasharray: 5 4;
  }
  .mark .stroke {
    fill: none;
  }
  .how {
    max-width: 90ch;
    font-size: 0.88rem;
    color: var(--ink-2);
    margin: 0 0 26px;
  }
  .none {
    font-size: 1.1rem;
    max-width: 70ch;
  }
  button {
    min-height: 44px;
    padding: 8px 18px;
    border: 2px solid var(--ink);
    background: transparent;
    color: var(--ink);
    font: inherit;
    cursor: pointer;
  }
  button:hover {
    background: var(--act-tint);
  }
  button:focus-visible {
    outline: 3px solid var(--act);
    outline-offset: 3px;
  }
  @media (max-width: 900px) {
    .caution {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media print {
    .tier > header {
      break-after: avoid;
    }
    button {
      display: none;
    }
  }
`;
