import { css } from 'lit';

/** The raised units as service tags: cut corners, a punched hole, what was found and what to check first. */
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
  .tag {
    --cut: 30px;
    position: relative;
    margin: 0 0 16px;
    padding: 16px 26px 18px 92px;
    background: var(--ink);
    clip-path: polygon(var(--cut) 0, 100% 0, 100% 100%, var(--cut) 100%, 0 calc(100% - var(--cut)), 0 var(--cut));
    isolation: isolate;
    break-inside: avoid;
  }
  .tag::before {
    content: '';
    position: absolute;
    inset: 2px;
    z-index: -1;
    background: var(--tag);
    clip-path: polygon(29px 0, 100% 0, 100% 100%, 29px 100%, 0 calc(100% - 29px), 0 29px);
  }
  .hole {
    position: absolute;
    left: 26px;
    top: calc(50% - 17px);
    width: 34px;
    height: 34px;
    border-radius: 50%;
    background: var(--floor);
    border: 2px solid var(--ink);
    box-shadow:
      0 0 0 7px var(--sheet),
      0 0 0 8px var(--rule-strong);
  }
  h4 {
    margin: 0;
    font-family: var(--stamped);
    font-size: 1.7rem;
    line-height: 1.1;
  }
  .place {
    margin: 0;
    color: var(--ink-2);
    font-size: 0.9rem;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 16px;
    align-items: baseline;
  }
  .finding {
    margin: 10px 0 0;
    display: grid;
    grid-template-columns: minmax(0, 1.15fr) minmax(0, 1fr);
    gap: 6px 34px;
  }
  .finding + .finding {
    border-top: 1px solid var(--rule-strong);
    padding-top: 10px;
  }
  .finding > bv-finding-working {
    grid-column: 1 / -1;
  }
  bv-derived-figures {
    display: block;
    margin: 8px 0 0;
  }
  .reason {
    margin: 0;
    font-weight: 700;
    font-size: 1.05rem;
  }
  .where {
    font-weight: 400;
    color: var(--ink-2);
  }
  .evidence {
    margin: 4px 0 0;
    text-wrap: pretty;
  }
  .first {
    margin: 0;
    align-self: start;
    padding: 6px 0 6px 14px;
    border-left: 6px solid var(--act);
  }
  .first b {
    display: block;
    font-size: 0.82rem;
    font-weight: 700;
    color: var(--ink-2);
  }
  .sure {
    margin: 8px 0 0;
    font-size: 0.82rem;
    color: var(--ink-2);
    font-variant-numeric: tabular-nums;
  }
  .lanes {
    --lane-paper: var(--tag);
    margin-top: 14px;
    padding-top: 8px;
    border-top: 1px solid var(--rule-strong);
  }
  .lanes svg {
    width: 100%;
    height: auto;
    display: block;
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
  button:focus-visible,
  summary:focus-visible {
    outline: 3px solid var(--act);
    outline-offset: 3px;
  }
  details {
    margin: 18px 0 0;
  }
  summary {
    cursor: pointer;
    width: fit-content;
    margin-bottom: 10px;
  }
  @media (max-width: 900px) {
    .finding,
    .caution {
      grid-template-columns: minmax(0, 1fr);
    }
    .tag {
      padding: 62px 18px 20px 22px;
    }
    .hole {
      left: calc(50% - 17px);
      top: 16px;
    }
  }
  @media print {
    .tier > header {
      break-after: avoid;
    }
    .tag {
      clip-path: none;
      background: none;
      border: 1px solid #000000;
      padding: 4mm;
    }
    .tag::before,
    .hole,
    button,
    details {
      display: none;
    }
  }
`;
