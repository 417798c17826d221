import { css } from 'lit';

/**
 * The Table's plan, by importance: the question with its answer, the rack, the list, the hands. Wide: a fixed sheet in
 * which the two columns above scroll by themselves. Narrow: the band is on top, the list under it, the hands further
 * down, and the rack stays at the lower edge.
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
    gap: 0 var(--space-5);
    --table-side: 16px;
    padding: 0 var(--table-side);
    align-content: start;
    grid-template-areas: 'top' 'deal' 'band' 'typed' 'side' 'hands' 'rack';
  }

  .top {
    grid-area: top;
    position: relative;
  }
  .rack {
    grid-area: rack;
  }
  .hands {
    grid-area: hands;
  }
  .side {
    grid-area: side;
  }
  .deal {
    grid-area: deal;
    padding-block: var(--space-3);
  }

  /* Where the type is so large that the rack would leave no room for anything else, it scrolls with the rest. */
  @container (min-width: 14rem) {
    .dealt .rack {
      position: sticky;
      inset-block-end: 0;
      z-index: 2;
    }
  }

  @container (min-width: 900px) {
    :host {
      flex: 1 1 0;
      min-height: 0;
    }

    .table {
      flex: 1 1 0;
      min-height: 0;
      grid-template-columns: minmax(0, 1.15fr) minmax(0, 0.35fr) minmax(0, 0.65fr);
      grid-template-rows: auto minmax(0, 1fr) auto auto;
      grid-template-areas:
        'top top top'
        'hands side side'
        'band band band'
        'rack rack rack';
      align-content: stretch;
    }

    .inplay {
      grid-template-areas:
        'top top top'
        'hands side side'
        'band band typed'
        'rack rack rack';
    }

    /* In a low window the tiles to click take all the room while they are needed. */
    @media (max-height: 760px) {
      .receiving {
        grid-template-areas:
          'top top top'
          'side side side'
          'band band band'
          'rack rack rack';
      }

      .receiving .hands {
        display: none;
      }
    }

    .dealing {
      grid-template-rows: auto minmax(0, 1fr) auto;
      grid-template-areas:
        'top top top'
        'deal deal deal'
        'rack rack rack';
    }

    .dealt .rack {
      position: static;
    }

    .hands,
    .side,
    .deal {
      contain: strict;
      overflow: auto;
      min-height: 0;
    }
  }
`;
