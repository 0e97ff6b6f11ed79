import { css } from 'lit';

/** A slip as it is tied to a burner: a ruled form on tag paper with a torn edge. */
export const correctionSlipStyle = css`
  :host {
    display: block;
    max-width: 62rem;
  }
  form {
    position: relative;
    margin: 10px 0 18px;
    padding: 16px 24px 18px;
    background: var(--tag);
    border: 2px solid var(--ink);
    border-top: 10px solid transparent;
    border-image: repeating-linear-gradient(90deg, var(--ink) 0 9px, transparent 9px 15px) 10 2 2 2;
  }
  h4 {
    margin: 0 0 2px;
    font-family: var(--stamped);
    font-size: 1.25rem;
  }
  .of {
    margin: 0 0 10px;
    color: var(--ink-2);
    font-size: 0.9rem;
  }
  fieldset {
    border: 0;
    margin: 0 0 8px;
    padding: 0;
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr));
    gap: 0 24px;
  }
  legend {
    padding: 0;
    font-weight: 650;
  }
  .pick {
    display: flex;
    gap: 10px;
    align-items: center;
    min-height: 40px;
    cursor: pointer;
  }
  .pick input {
    flex: none;
    width: 20px;
    height: 20px;
    accent-color: var(--act);
  }
  .fill {
    display: flex;
    flex-wrap: wrap;
    gap: 10px 22px;
    align-items: end;
    margin: 0 0 14px;
  }
  .fill label {
    display: grid;
    gap: 2px;
    font-size: 0.86rem;
    color: var(--ink-2);
  }
  .fill .long {
    flex: 1 1 22rem;
  }
  .quiet {
    font-size: 0.86rem;
    color: var(--ink-2);
    align-self: end;
    padding-bottom: 10px;
  }
  .fill input,
  .fill select {
    font: inherit;
    font-size: 1rem;
    color: var(--ink);
    background: var(--sheet);
    border: 0;
    border-bottom: 2px solid var(--ink);
    border-radius: 0;
    min-height: 40px;
    padding: 4px 8px;
    max-width: 100%;
    box-sizing: border-box;
  }
  .fill .long input {
    width: 100%;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
    margin: 0;
    align-items: center;
  }
  button.strong {
    background: var(--ink);
    color: var(--tag);
  }
  button.strong:hover:not(:disabled) {
    background: var(--act-tint);
    color: var(--ink);
  }
  button.strong:disabled {
    background: var(--rule);
    color: var(--ink-2);
  }
  :is(input, select):focus-visible {
    outline: 3px solid var(--act);
    outline-offset: 2px;
  }
  .fault {
    margin: 0 0 12px;
    padding-left: 14px;
    border-left: 8px solid var(--danger);
    font-weight: 650;
  }
  @media print {
    :host {
      display: none;
    }
  }
`;
