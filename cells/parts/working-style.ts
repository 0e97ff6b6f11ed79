import { css } from 'lit';

/** A working: its head with the number, the readings in their file, the inputs, the sources. */
export const workingStyle = css`
  :host {
    display: block;
  }
  section {
    container-type: inline-size;
    border: 2px solid var(--ink, #14202a);
    background: var(--plate, #f4f7f8);
    color: var(--ink, #14202a);
    padding: 18px 24px 22px;
    outline-offset: 3px;
    font-variant-numeric: tabular-nums lining-nums;
  }
  section:focus-visible {
    outline: 3px solid var(--act, #00578a);
  }
  :host([inner]) section {
    border-width: 0 0 0 6px;
    padding: 8px 0 8px 18px;
    background: none;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 22px;
    align-items: baseline;
  }
  .head p {
    margin: 0;
  }
  h4 {
    margin: 0;
    font-family: var(--stamped);
    font-size: 1.45rem;
    line-height: 1.15;
  }
  :host([inner]) h4 {
    font-size: 1.15rem;
  }
  h5 {
    margin: 22px 0 8px;
    font-size: 1rem;
    font-weight: 700;
  }
  .number {
    font-size: 1.2rem;
  }
  .number span {
    color: var(--ink-2, #43525d);
    font-size: 1rem;
  }
  .away {
    margin-left: auto;
  }
  pre:focus-visible {
    outline: 3px solid var(--act, #00578a);
    outline-offset: 2px;
  }
  .pair {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    gap: 0 44px;
  }
  p {
    margin: 0 0 6px;
  }
  .of {
    font-weight: 650;
  }
  .reading + .reading {
    margin-top: 20px;
  }
  table {
    border-collapse: collapse;
    margin: 6px 0 10px;
    font-size: 0.92rem;
  }
  th,
  td {
    text-align: left;
    padding: 3px 18px 3px 0;
    border-bottom: 1px solid var(--rule, #c6d0d5);
    vertical-align: top;
  }
  td:last-child {
    padding-right: 0;
    overflow-wrap: anywhere;
  }
  th {
    font-weight: 650;
    font-size: 0.85rem;
    color: var(--ink-2, #43525d);
  }
  .n {
    text-align: right;
  }
  .line-head {
    font-size: 0.85rem;
    color: var(--ink-2, #43525d);
    margin: 0;
  }
  pre {
    margin: 2px 0 0;
    padding: 8px 12px;
    background: var(--sheet, #ffffff);
    border-left: 6px solid var(--rule-strong, #6a7983);
    font-size: 0.82rem;
    line-height: 1.45;
    white-space: pre-wrap;
    overflow-wrap: anywhere;
    max-height: 12em;
    overflow: auto;
  }
  ul,
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .inputs {
    columns: 2;
    column-gap: 44px;
  }
  .onward .inputs {
    columns: auto;
  }
  .inputs li {
    break-inside: avoid;
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 18px;
    padding: 4px 0;
    border-bottom: 1px solid var(--rule, #c6d0d5);
    font-size: 0.92rem;
  }
  .inputs bv-working {
    flex: 1 0 100%;
    margin: 10px 0 6px;
  }
  .inputs .value {
    margin-left: auto;
  }
  .onward .inputs .value {
    margin-left: 0;
    font-size: 1.05rem;
    font-weight: 650;
  }
  .onward .inputs li {
    justify-content: flex-start;
    align-items: center;
    border: 0;
  }
  .sign,
  .sd,
  .by,
  .standing {
    color: var(--ink-2, #43525d);
  }
  .comma {
    font-size: 0;
  }
  sub {
    font-size: 0.74em;
    line-height: 0;
  }
  .symbol {
    white-space: nowrap;
  }
  dl {
    margin: 0;
    font-size: 0.88rem;
  }
  dt {
    font-weight: 650;
  }
  dd {
    margin: 0 0 6px;
    color: var(--ink-2, #43525d);
  }
  .sources li {
    margin: 0 0 6px;
    font-size: 0.88rem;
    max-width: 80ch;
  }
  @container (max-width: 640px) {
    .pair {
      grid-template-columns: minmax(0, 1fr);
    }
    .inputs {
      columns: auto;
    }
  }
  @media (max-width: 700px) {
    section {
      padding: 14px 14px 18px;
    }
    :host([inner]) section {
      padding-left: 10px;
    }
  }
  @media print {
    .away {
      display: none;
    }
  }
`;
