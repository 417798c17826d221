import { css } from 'lit';

/** The list of games. */
export const journalStyles = css`
  .games {
    display: flex;
    flex-direction: column;
    padding: 0;
    list-style: none;
  }

  .games li {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    align-items: center;
    gap: var(--space-2) var(--space-4);
    max-width: none;
    padding: var(--space-3) 0;
    border-top: 1px solid var(--hairline);
  }

  .when {
    display: flex;
    flex-direction: column;
  }

  em {
    font-style: normal;
    font-weight: 700;
    color: var(--accent);
  }

  @container (min-width: 44rem) {
    .games li {
      grid-template-columns: minmax(0, 3fr) minmax(0, 3fr) auto;
    }
  }
`;
