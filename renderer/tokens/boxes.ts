import { css } from 'lit';

/** A box to write in or to choose from, as wide as its place, below its bold label. */
export const boxStyles = css`
  label {
    display: block;
    font-weight: 600;
  }

  input,
  select,
  textarea {
    display: block;
    width: 100%;
    min-height: var(--target-main);
    margin-top: var(--space-1);
    padding: 0.4em 0.7em;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
    line-height: var(--line);
  }

  select {
    cursor: pointer;
  }

  textarea {
    resize: vertical;
  }
`;
