import { css } from 'lit';

/** The edge and the ground of every box. */
const box = css`
  min-height: var(--target-main);
  border: var(--stroke) solid var(--edge);
  border-radius: var(--round);
  background: var(--sheet);
`;

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
    margin-top: var(--space-1);
    padding: 0.4em 0.7em;
    ${box}
    line-height: var(--line);
  }

  select {
    cursor: pointer;
  }

  textarea {
    resize: vertical;
  }
`;

/** A box to choose from, as wide as what it holds, alone or below its bold label. */
export const pickStyles = css`
  select {
    max-width: 100%;
    padding: 0.3em 0.6em;
    cursor: pointer;
    ${box}
  }

  .labelled {
    display: flex;
    flex-direction: column;
    gap: var(--space-1);
    min-width: 0;
    max-width: 100%;
    font-weight: 600;
  }

  .labelled select {
    font-weight: 400;
  }
`;
