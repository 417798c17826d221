import { css } from 'lit';

/** The rules of what is only spoken, for selectors of a sheet's own. */
export const unseenRules = css`
  position: absolute;
  width: 1px;
  height: 1px;
  margin: -1px;
  overflow: hidden;
  clip-path: inset(50%);
  white-space: nowrap;
`;

/** What every element's shadow starts from. */
export const sharedStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }

  :host {
    color: var(--ink);
    font-family: var(--font);
    font-variant-numeric: tabular-nums;
    line-height: var(--line);
  }

  :host([hidden]) {
    display: none;
  }

  :focus-visible {
    outline: var(--ring) solid var(--focus);
    outline-offset: 2px;
  }

  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
    letter-spacing: inherit;
    word-spacing: inherit;
  }

  .unseen {
    ${unseenRules}
  }

  summary {
    min-height: var(--target);
    display: list-item;
    align-content: center;
    cursor: pointer;
    font-weight: 600;
  }
`;
