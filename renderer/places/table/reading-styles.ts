import { css } from 'lit';

/** The list of hands: each its name, its 14 places, and its numbers in columns. */
export const readingStyles = css`
  .reading {
    container-type: inline-size;
    padding-bottom: var(--space-3);
    gap: var(--space-2);
  }

  .head {
    position: relative;
  }

  /* The hands below are not of this rack yet. Over the heading, else over the first of them, so that nothing moves. */
  .busy {
    position: absolute;
    z-index: 1;
    inset: 0 auto auto 0;
    padding: 0.35em var(--space-3);
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
    font-weight: 600;
    pointer-events: none;
  }

  .hands {
    display: flex;
    flex-direction: column;
  }

  /* What is scrolled out of sight is neither laid out nor painted, but it is there for a reader. */
  .hands li {
    content-visibility: auto;
    contain-intrinsic-block-size: auto 5.5rem;
    display: grid;
    gap: var(--space-1) var(--space-3);
    padding-block: var(--space-2);
    border-top: 1px solid var(--hairline);
  }

  .facts {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-3);
    max-width: none;
  }

  .name {
    font-weight: 700;
  }

  .numbers {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-3);
  }

  .number {
    display: flex;
    align-items: center;
  }

  .caption {
    color: var(--ink-soft);
    font-size: var(--text-small);
    line-height: 1.2;
  }

  .turning {
    padding-top: var(--space-3);
    border-top: 1px solid var(--hairline);
  }

  .turning li {
    --tile-width: 36px;
    display: flex;
    align-items: center;
  }

  wr-hand {
    --tile-width: clamp(17px, 5.2cqi, 34px);
  }

  @container (max-width: 32rem) {
    h2 {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }

    .busy {
      top: 100%;
    }
  }

  @container (min-width: 42rem) {
    .hands li {
      grid-template-columns: minmax(0, 1fr) auto;
      grid-template-areas: 'facts numbers' 'hand numbers';
    }
    .facts {
      grid-area: facts;
    }
    wr-hand {
      grid-area: hand;
      --tile-width: clamp(18px, 3.35cqi, 34px);
    }
    .numbers {
      grid-area: numbers;
      display: grid;
      grid-template-columns: 3.4rem 6.2rem 6.6rem;
      align-self: center;
      gap: 0;
    }
    .number {
      flex-direction: column;
    }
  }
`;
