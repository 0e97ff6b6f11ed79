import { css } from 'lit';

/** A raised unit as a service tag: cut corners, a punched hole, what was found and what to check first. */
export const raisedTagStyle = css`
  :host {
    display: block;
    margin: 0 0 16px;
    break-inside: avoid;
    /* A tag far from the screen is neither laid out nor painted. */
    content-visibility: auto;
    contain-intrinsic-size: auto 560px;
  }
  .tag {
    --cut: 30px;
    position: relative;
    padding: 16px 26px 18px 92px;
    background: var(--ink);
    clip-path: polygon(var(--cut) 0, 100% 0, 100% 100%, var(--cut) 100%, 0 calc(100% - var(--cut)), 0 var(--cut));
    isolation: isolate;
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
  details {
    margin: 18px 0 0;
  }
  @media (max-width: 900px) {
    .finding {
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
    :host {
      content-visibility: visible;
    }
    .tag {
      clip-path: none;
      background: none;
      border: 1px solid #000000;
      padding: 4mm;
    }
    .tag::before,
    .hole,
    details,
    bv-derived-figures {
      display: none;
    }
  }
`;
