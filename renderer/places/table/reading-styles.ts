import { css } from 'lit';

/** The nearest hands: each its name, how far away it is, and its 14 places. */
export const readingStyles = css`
  .reading {
    container-type: inline-size;
    padding-bottom: var(--space-3);
    gap: var(--space-1);
  }

  .head {
    position: relative;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 0 var(--space-3);
    min-height: var(--target);
    border-bottom: 1px solid var(--hairline);
  }

  .lean summary {
    color: var(--ink-soft);
    font-size: var(--text-small);
    font-weight: 400;
  }

  .lean[open] {
    flex-basis: 100%;
    padding-bottom: var(--space-2);
  }

  /* The hands below are not of this rack yet. Over the heading, so that nothing moves. */
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
    padding-block: 0 var(--space-2);
    border-bottom: 1px solid var(--hairline);
  }

  .facts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-3);
  }

  .facts wr-explain {
    margin-inline-start: auto;
  }

  .facts wr-explain p + p {
    margin-top: var(--space-2);
  }

  .name {
    font-weight: 700;
  }

  .turning {
    padding-top: var(--space-3);
  }

  .turning li {
    --tile-width: clamp(36px, 2rem, 48px);
    display: flex;
    align-items: center;
  }

  wr-hand {
    --tile-width: clamp(17px, 4.6cqi, 1.9rem);
  }
`;
