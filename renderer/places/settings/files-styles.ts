import { css } from 'lit';

/** How the parts of the Settings about files look. */
export const filesStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    gap: var(--space-3);
    width: 100%;
  }

  h3,
  p,
  ul {
    max-width: min(65ch, 100%);
    margin: 0;
    overflow-wrap: anywhere;
  }

  h3 {
    margin-top: var(--space-3);
    font-size: var(--text-body);
  }

  /* Two lines, so that an answer moves nothing that is below. */
  .said {
    min-height: 2.9em;
  }

  code {
    font-family: var(--font-code);
  }

  .soft {
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  progress {
    width: min(20rem, 100%);
  }

  input[type='file'] {
    display: none;
  }
`;
