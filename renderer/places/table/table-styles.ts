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
    --table-side: 16px;
    padding: 0 var(--table-side) var(--space-3);
    align-content: start;
  }

  .head {
    position: relative;
  }

  @container (min-width: 50rem) {
    :host {
      flex: 1 1 0;
      min-height: 31rem;
    }

    .table {
      flex: 1 1 0;
      min-height: 0;
      grid-template-columns: minmax(0, 1fr) clamp(27rem, 38cqi, 31rem);
      grid-template-rows: auto auto minmax(0, 1fr) auto;
      column-gap: var(--space-5);
      grid-template-areas:
        'head head'
        'lean exchange'
        'reading exchange'
        'rack rack';
      padding-bottom: 0;
      align-content: stretch;
    }

    .inplay {
      grid-template-areas:
        'head head'
        'advice exchange'
        'reading exchange'
        'rack rack';
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
    .advice {
      grid-area: advice;
    }
    .reading,
    .exchange,
    .deal {
      contain: strict;
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
