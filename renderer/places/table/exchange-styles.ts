import { css } from 'lit';

/** The exchange: a path of steps over what is due. */
export const exchangeStyles = css`
  :host {
    container-type: inline-size;
  }

  .exchange {
    padding: var(--space-4);
    background: var(--sheet);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
    gap: var(--space-4);
  }

  h2 {
    font-size: var(--text-lead);
  }

  .rounds {
    display: flex;
    gap: var(--space-2);
  }

  .rounds > li {
    flex: 3 1 0;
  }

  .rounds > li:last-child {
    flex: 0 0 auto;
    min-width: 4.6rem;
  }

  .round {
    display: block;
    padding-inline: var(--space-1);
    font-size: var(--text-small);
    color: var(--ink-soft);
  }

  .rounds ol {
    display: flex;
  }

  .station {
    flex: 1 1 0;
    min-width: 0;
    display: flex;
    flex-direction: column;
    align-items: center;
    padding: var(--space-1) 0;
    border: var(--stroke) solid transparent;
    border-radius: var(--round);
    font-size: var(--text-small);
    line-height: 1.2;
    color: var(--ink-soft);
  }

  /* Without room for all words: the arrows, and the word of the step that is due. */
  @container (max-width: 29rem) {
    .rounds {
      flex-wrap: wrap;
    }

    .rounds > li {
      flex: 3 1 auto;
    }

    .rounds > li:last-child {
      min-width: 0;
    }

    .round,
    .station:not(.now) .word {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }

    .station {
      min-width: 1.6rem;
      min-height: 3.2rem;
      justify-content: center;
    }

    .station.now {
      flex: 0 0 auto;
      padding-inline: var(--space-2);
    }

    .exchange {
      padding: var(--space-3);
    }
  }

  @container (24rem < width < 33rem) {
    wr-tray {
      --tile-width: 40px;
    }
  }

  .station .arrow {
    font-size: var(--text-lead);
  }

  .station.now {
    border-color: var(--accent);
    background: var(--accent-wash);
    color: var(--ink);
    font-weight: 700;
  }

  .station.skipped {
    text-decoration: line-through;
  }

  /* From the top: the reason that comes and goes below the button must not move it. */
  .tray {
    align-items: flex-start;
  }

  .refusal:empty {
    display: none;
  }

  .stop {
    padding-top: var(--space-3);
    border-top: 1px solid var(--hairline);
  }

  .stop p {
    flex: 1 1 12rem;
  }

  .onward {
    gap: 0;
    padding-top: var(--space-1);
    margin-block-end: calc(-1 * var(--space-3));
  }

  summary {
    min-height: var(--target);
    display: list-item;
    align-content: center;
    cursor: pointer;
    font-weight: 600;
  }

  .passes li {
    display: grid;
    gap: var(--space-1);
    padding-block: var(--space-2);
    border-top: 1px solid var(--hairline);
  }

  .small {
    --tile-width: 30px;
  }
`;
