import { css } from 'lit';

/** The advice: what to do now, and the target below. */
export const adviceStyles = css`
  .advice {
    padding: var(--space-2) var(--space-4);
    background: var(--sheet);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
  }

  /* The place of the choices is kept free, so that nothing moves when they come. */
  .now {
    display: flex;
    flex-direction: column;
    gap: var(--space-1);
    min-height: calc(2 * var(--target) + var(--space-2));
  }

  p {
    max-width: none;
  }

  ol {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-3);
  }

  li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-1);
  }

  .tiles {
    --tile-width: 33px;
    display: inline-flex;
    gap: 3px;
  }

  .cost {
    min-width: 6em;
    font-size: var(--text-small);
  }

  wr-explain p + p {
    margin-top: var(--space-2);
  }

  .refusal:empty {
    display: none;
  }
`;
