import { css } from 'lit';

/**
 * One problem on one page. Wide and high enough: a fixed sheet, in which what is asked and the card scroll by
 * themselves above the band and the rack. Narrow or low: one column, the question first.
 */
export const runStyles = css`
  :host {
    display: flex;
    flex: 1 1 auto;
    flex-direction: column;
    container-type: inline-size;
  }

  .run {
    flex: 1 1 auto;
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-2) var(--space-5);
    align-content: start;
    grid-template-areas: 'top' 'band' 'rack' 'left' 'card' 'onward';
  }

  .ended {
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
    padding-bottom: var(--space-5);
  }

  .top {
    grid-area: top;
  }

  .left,
  .whole {
    grid-area: left;
    min-width: 0;
  }

  section.left {
    display: flex;
    flex-direction: column;
    gap: var(--space-2);
  }

  .card {
    grid-area: card;
    min-width: 0;
  }

  .band {
    grid-area: band;
    margin-inline: -16px;
    padding: var(--space-2) 16px;
    background: var(--sheet);
    border-block: 1px solid var(--hairline);
  }

  .shelf {
    grid-area: rack;
    margin-inline: -16px;
    padding: var(--space-1) 16px;
    background: var(--well);
    container-type: inline-size;
  }

  wr-rack {
    --ledge: 20px;
    --tile-width: clamp(48px, (100cqi - 32px) / 14 - 8px, 60px);
    --tile-gap: 8px;
  }

  /* With the answer the words have the room. */
  .answered wr-rack {
    --ledge: 12px;
    --tile-width: 48px;
  }

  .answered .tools {
    min-height: 0;
  }

  .onward {
    grid-area: onward;
    padding-bottom: var(--space-4);
  }

  @container (max-width: 820px) {
    wr-rack {
      --tile-width: clamp(47.7px, 100cqi / 7 - 8px, 60px);
      --rack-side: 4px;
    }
  }

  .tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 0 var(--space-4);
  }

  /* Beside the choice of what a tap does: a refusal moves nothing. */
  .tools .bad {
    flex: 1 1 12rem;
  }

  .bad:empty {
    display: none;
  }

  .mark {
    padding-bottom: 2px;
    border-bottom: 4px solid var(--accent);
  }

  .mark.spare {
    border-bottom-style: dotted;
    border-bottom-color: var(--edge);
  }

  @container (max-width: 28rem) {
    .shelf {
      padding-inline: 2px;
    }

    .tools {
      padding-inline: 14px;
    }
  }

  @media (min-height: 40em) {
    @container (min-width: 50rem) {
      :host {
        min-height: 0;
      }

      .run {
        flex: 1 1 0;
        min-height: 0;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1.1fr);
        grid-template-rows: auto minmax(0, 1fr) auto auto;
        grid-template-areas:
          'top top'
          'left card'
          'band band'
          'rack rack';
        align-content: stretch;
      }

      .onward {
        display: none;
      }

      .whole {
        grid-column: 1 / -1;
        grid-row: 2;
      }

      .left,
      .whole,
      .card {
        min-height: 0;
        overflow: auto;
      }
    }
  }
`;
