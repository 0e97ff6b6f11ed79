import { css } from 'lit';

/** The chain as a length of pipe: each relation a fitting on it, the number at its end; and what its uncertainty is made of, as bars. */
export const workingChainStyle = css`
  .chain {
    --pipe: 10px;
    position: relative;
  }
  .chain li {
    position: relative;
    padding: 0 0 16px 36px;
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(9.5em, max-content);
    gap: 0 24px;
  }
  .chain li > * {
    grid-column: 1;
  }
  .chain li > .result {
    grid-column: 2;
    grid-row: 1 / span 4;
    align-self: end;
    text-align: right;
    padding-bottom: 1.35em;
  }
  .chain li::before {
    content: '';
    position: absolute;
    left: 6px;
    top: 12px;
    bottom: -12px;
    width: var(--pipe);
    background: var(--gas, #f0e442);
    border-inline: 2px solid var(--casing, #14202a);
    box-sizing: border-box;
  }
  .chain li::after {
    content: '';
    position: absolute;
    left: 2px;
    top: 5px;
    width: 18px;
    height: 14px;
    background: var(--sheet, #ffffff);
    border: 2px solid var(--casing, #14202a);
    box-sizing: border-box;
  }
  .chain .last {
    padding-bottom: 4px;
  }
  .chain .last::before {
    display: none;
  }
  .chain .last::after {
    background: var(--casing, #14202a);
    outline: 3px solid var(--gas, #f0e442);
  }
  .what {
    font-weight: 650;
    margin: 0 0 2px;
  }
  .symbols,
  .numbers {
    margin: 0 0 2px;
    line-height: 1.55;
    overflow-wrap: anywhere;
  }
  .numbers {
    color: var(--ink-2, #43525d);
  }
  .result {
    margin: 0;
    font-weight: 700;
  }
  .last .result {
    font-size: 1.2rem;
  }
  .by {
    margin: 0;
    font-size: 0.82rem;
  }
  .budget li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 7.5em;
    gap: 0 14px;
    align-items: end;
    padding: 3px 0;
    font-size: 0.92rem;
  }
  .budget .percent,
  .budget .detail {
    text-align: right;
    white-space: nowrap;
  }
  .budget .detail {
    color: var(--ink-2, #43525d);
  }
  .budget svg {
    width: 100%;
    height: 12px;
  }
  .whole {
    fill: var(--sheet, #ffffff);
    stroke: var(--rule-strong, #6a7983);
    vector-effect: non-scaling-stroke;
  }
  .part {
    fill: var(--lane-fit, #0072b2);
  }
  @container (max-width: 640px) {
    .chain li {
      grid-template-columns: minmax(0, 1fr);
    }
    .chain li > .result {
      grid-column: 1;
      grid-row: auto;
      text-align: left;
      padding-bottom: 0;
    }
  }
`;
