import { css } from 'lit';

/** One line, built and typed: what is reserved, and what comes where. */
export const lineFormStyles = css`
  :host {
    container-type: inline-size;
  }

  .facts {
    min-height: var(--target);
  }

  .count {
    font-weight: 700;
  }

  .whole::before {
    content: '✓ ';
  }

  /* The groups may wrap without moving the buttons below them; where there is no room for that, they come last. */
  .drawn {
    order: 1;
  }

  @container (min-width: 40rem) {
    .drawn {
      order: 0;
      min-height: 17.5rem;
    }
  }

  @container (min-width: 50rem) {
    .drawn {
      min-height: 10.5rem;
    }
  }

  details {
    order: 1;
  }

  wr-line-settings {
    order: 2;
  }

  .picker h3 {
    min-height: var(--target);
    align-content: center;
  }

  .pick {
    min-height: var(--target);
  }

  .picker {
    padding: var(--space-3);
    border-radius: var(--round);
    background: var(--well);
  }

  .leaf {
    min-height: var(--target);
  }

  dl {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-1) var(--space-4);
    margin: 0;
  }

  @container (min-width: 24rem) {
    dl {
      grid-template-columns: auto minmax(0, 1fr);
    }
  }

  dt {
    font-family: var(--font-code);
    font-weight: 600;
  }

  dd {
    margin: 0;
  }
`;
