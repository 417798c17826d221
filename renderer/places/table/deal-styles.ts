import { css } from 'lit';

/** The entry beside its tray, or above it where there is no room. */
export const dealStyles = css`
  .deal {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4) var(--space-5);
    padding: var(--space-4);
    background: var(--sheet);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
  }

  h2 {
    font-size: var(--text-title);
  }

  /* Not needed any more once tiles are entered, but nothing may move for that. */
  .gone {
    visibility: hidden;
  }

  .example {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-3);
    padding: var(--space-4);
    background: var(--accent-wash);
    border-radius: var(--round);
  }

  @container (min-width: 52rem) {
    .deal {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1.4fr);
      align-items: start;
    }
  }
`;
