import { css } from 'lit';

/** The exchange: a path of steps over what is due. */
export const exchangeStyles = css`
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
    display: grid;
    grid-template-columns: 3fr 3fr minmax(5.2rem, 1.2fr);
    gap: var(--space-2);
  }

  .round {
    display: block;
    padding-inline: var(--space-1);
    font-size: var(--text-small);
    color: var(--ink-soft);
  }

  .rounds ol {
    display: grid;
    grid-auto-flow: column;
    grid-auto-columns: minmax(0, 1fr);
  }

  .station {
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

  /* Without room for words: the arrows, and the word of the step that is due. */
  @container (max-width: 28rem) {
    .round,
    .station:not(.now) .word {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }

    .rounds {
      grid-template-columns: 3fr 3fr 1.4fr;
      gap: var(--space-1);
    }

    .station {
      min-height: var(--target);
      justify-content: center;
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

  .stop {
    padding-top: var(--space-3);
    border-top: 1px solid var(--hairline);
  }

  .stop p {
    flex: 1 1 12rem;
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

  .over {
    padding: var(--space-4);
    background: var(--good-wash);
    border-radius: var(--round);
  }
`;
