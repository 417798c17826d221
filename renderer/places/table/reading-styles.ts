import { css } from 'lit';

/** The list of hands. */
export const readingStyles = css`
  .reading {
    padding-bottom: var(--space-3);
  }

  .hands {
    display: flex;
    flex-direction: column;
  }

  .hands li {
    display: grid;
    gap: var(--space-1);
    padding-block: var(--space-3);
    border-top: 1px solid var(--hairline);
  }

  .facts {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-3);
  }

  .name {
    font-weight: 700;
  }

  .numbers {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-3);
    margin-inline-start: auto;
  }

  .away {
    font-weight: 700;
  }

  wr-hand {
    --tile-width: clamp(20px, 2.6cqi, 34px);
  }
`;
