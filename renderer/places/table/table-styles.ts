import { css } from 'lit';

/**
 * The Table's plan. Narrow or with large type: one column, the page scrolls. Wide: a fixed sheet,
 * the rack along the bottom, where the reading and the exchange scroll by themselves.
 */
export const tableStyles = css`
  :host {
    display: flex;
    flex: 1 0 auto;
    flex-direction: column;
  }

  .table {
    flex: 1 1 auto;
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-3);
    padding: var(--space-3);
    align-content: start;
  }

  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
  }

  h1 {
    margin: 0;
    font-size: var(--text-title);
    line-height: 1.2;
  }

  .where {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-3);
  }

  .where p {
    color: var(--ink-soft);
  }

  .head wr-notice {
    flex: 1 1 100%;
  }

  @container (min-width: 50rem) {
    :host {
      flex: 1 1 0;
      min-height: 31rem;
    }

    .table {
      flex: 1 1 0;
      min-height: 0;
      grid-template-columns: minmax(0, 1fr) clamp(24rem, 38cqi, 31rem);
      grid-template-rows: auto auto minmax(0, 1fr) auto;
      column-gap: var(--space-5);
      grid-template-areas:
        'head head'
        'lean exchange'
        'reading exchange'
        'rack rack';
      padding: var(--space-3) var(--space-4) 0;
      align-content: stretch;
    }

    .dealing {
      grid-template-rows: auto minmax(0, 1fr) auto;
      grid-template-areas:
        'head head'
        'deal deal'
        'rack rack';
    }

    .head {
      grid-area: head;
    }
    .rack {
      grid-area: rack;
    }
    .lean {
      grid-area: lean;
    }
    .reading,
    .exchange,
    .deal {
      overflow: auto;
      min-height: 0;
    }
    .reading {
      grid-area: reading;
    }
    .exchange {
      grid-area: exchange;
    }
    .deal {
      grid-area: deal;
    }
  }
`;
