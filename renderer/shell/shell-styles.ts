import { css } from 'lit';

/** The frame: one slim bar over the place that is open. */
export const shellStyles = css`
  /* All that is in it scrolls with it, also what is placed by itself. */
  :host {
    position: relative;
    display: flex;
    flex-direction: column;
    height: 100dvh;
    overflow: auto;
    scroll-padding-block: var(--space-4);
  }

  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-4);
    padding: var(--space-2) var(--space-4);
    background: var(--sheet);
    border-bottom: 1px solid var(--hairline);
  }

  .name {
    font-size: var(--text-title);
    font-weight: 700;
    letter-spacing: -0.01em;
    color: var(--accent);
  }

  wr-places {
    flex: 1 1 auto;
  }

  .saved {
    min-width: 6.5em;
    text-align: end;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  [data-saved='saved']::before {
    content: '✓ ';
  }

  [data-saved='failed'] {
    color: var(--bad);
    font-weight: 700;
  }

  .offer {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: center;
    gap: var(--space-1) var(--space-4);
    padding: var(--space-1) var(--space-4);
    border-bottom: 1px solid var(--hairline);
    background: var(--accent-wash);
  }

  header,
  .offer,
  wr-notice {
    flex: none;
  }

  main {
    flex: 1 0 auto;
    display: flex;
    flex-direction: column;
    container-type: inline-size;
  }

  main:focus-visible {
    outline: none;
  }

  /* With room for it, a place may be a fixed sheet whose parts scroll by themselves. */
  @media (min-height: 40em) {
    main.sheet {
      flex: 1 1 0;
      min-height: 0;
    }
  }

  wr-notice {
    margin: var(--space-2) var(--space-4) 0;
  }

  .skip {
    position: absolute;
    inset-inline-start: var(--space-2);
    top: -10rem;
    z-index: 10;
    padding: var(--space-3) var(--space-4);
    background: var(--accent);
    color: var(--on-accent);
    border-radius: var(--round);
  }

  .skip:focus {
    top: var(--space-2);
  }

  /* Large text in a usual window: the bar keeps to one row. */
  @media (max-width: 100rem) {
    header {
      font-size: min(1rem, max(18px, 1.5vw));
    }

    header wr-places,
    header wr-button {
      --room: min(0.9em, 1.15vw);
    }
  }

  /* With little room the bar keeps to two rows: the places, then what serves them all. */
  @media (max-width: 68rem) {
    header {
      gap: var(--space-1);
      --target: max(44px, 2.45em);
      --target-main: max(48px, 2.7em);
      font-size: min(1rem, max(18px, 1.8vw));
    }

    header .name {
      font-size: 1.3em;
    }

    header wr-places,
    header wr-button {
      --room: 0.5em;
    }

    header .name {
      margin-inline-end: var(--space-3);
    }
  }

  @media (max-width: 50rem) {
    header {
      justify-content: end;
      padding-inline: var(--space-2);
    }

    header .name {
      display: none;
    }

    header wr-places {
      flex-basis: 100%;
      --room: 0.3em;
    }

    /* Large text in a narrow window: the bar must not take the place of all else. */
    header {
      --target: max(44px, 2.45em);
      --target-main: max(48px, 2.7em);
      font-size: min(1rem, max(18px, 6vw));
    }
  }

  /* A telephone: all places in one row, and one more row for the rest. */
  @media (max-width: 30rem) {
    header {
      gap: 0 var(--space-1);
      padding-block: 0;
      font-size: min(1rem, max(16px, 4.2vw));
    }

    header wr-places {
      --room: 0.22em;
    }
  }

  /* On paper the page is as long as it is, over as many sheets as it takes. */
  @media print {
    :host {
      display: block;
      height: auto;
      overflow: visible;
    }

    main {
      display: block;
    }

    header,
    .offer,
    .skip {
      display: none;
    }
  }
`;
