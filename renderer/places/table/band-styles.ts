import { css } from 'lit';
import { unseenRules } from '../../tokens/shared.ts';

/** The band over the rack: the question, the tray, the one main button, and why. It never scrolls away. */
export const bandStyles = css`
  :host {
    display: contents;
  }

  .band {
    grid-area: band;
    container-type: inline-size;
    margin-inline: calc(-1 * var(--table-side));
    padding: var(--space-2) var(--table-side);
    background: var(--sheet);
    border-block-start: 1px solid var(--hairline);
  }

  .head {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 0 var(--space-4);
  }

  .band h2 {
    font-size: var(--text-title);
  }

  .arrow {
    display: none;
  }

  .stations {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-1);
    font-size: var(--text-small);
    line-height: 1.3;
    color: var(--ink-soft);
  }

  .station {
    padding: 0.1em 0.55em;
    border-radius: 1em;
  }

  .station.first {
    margin-inline-start: var(--space-4);
  }

  .station.now {
    background: var(--accent);
    color: var(--on-accent);
    font-weight: 700;
  }

  .station.skipped {
    text-decoration: line-through;
  }

  .chance {
    flex: none;
    display: flex;
    align-items: center;
    min-height: var(--target);
    margin: 0;
    --explain-wrap: normal;
  }

  .answer {
    --tile-width: clamp(48px, min(100cqi / 7 - 8px, 100vw / 14 - 10px + max(0px, 800px - 100vw)), var(--tile-usual));
    display: grid;
    grid-template-columns: auto auto minmax(0, 1fr);
    align-items: center;
    gap: var(--space-1) var(--space-4);
    min-height: calc(var(--tile-width) * 4 / 3 + 24px);
  }

  /* In the middle of the tray, whatever is said below it. */
  .answer > wr-button[look='main'] {
    align-self: start;
    margin-block-start: calc((var(--tile-width) * 4 / 3 + 26px - var(--target-main)) / 2);
  }

  .said {
    font-size: var(--text-body);
    line-height: 1.3;
  }

  /* Two lines, so that what stands beside the headline keeps its place. */
  .said p {
    min-height: 2.6em;
    max-width: none;
    margin: 0;
  }

  .said strong {
    display: block;
  }

  .refusal:empty {
    display: none;
  }

  /* Without room for all words: arrows for the steps that are not due. */
  @container (max-width: 72rem) {
    .stations {
      gap: 0;
    }

    .arrow {
      display: inline;
    }

    .station:not(.now) .word {
      ${unseenRules}
    }

    .station.first {
      margin-inline-start: var(--space-2);
    }
  }

  /* Large type in a low window: what is due stands in the heading. */
  @media (max-height: 760px) {
    @container (640px < width < 44rem) {
      .stations {
        ${unseenRules}
      }

      .band h2 {
        font-size: var(--text-lead);
      }

      .said {
        font-size: var(--text-small);
        line-height: 1.2;
      }

      .head {
        --target: 44px;
      }
    }
  }

  /* On a small screen the heading tells the step. */
  @container (max-width: 25rem) {
    .stations {
      ${unseenRules}
    }
  }

  /* Without room beside each other: the tray with its button, and why below them. */
  @container (max-width: 640px) {
    .band h2 {
      font-size: var(--text-lead);
    }

    .answer {
      grid-template-columns: auto minmax(0, 1fr);
      gap: var(--space-1) var(--space-3);
    }

    .answer > .said {
      grid-column: 1 / -1;
    }

    .head {
      flex-wrap: wrap;
      --target: 44px;
    }

    .chance {
      flex: initial;
    }

    .head h2 {
      flex-basis: 100%;
    }

    .said {
      font-size: var(--text-small);
    }
  }
`;
