import { css } from 'lit';

/** The outline beside what is chosen in it, where there is room; else below. */
export const cardLinesStyles = css`
  :host {
    container-type: inline-size;
  }

  .plan {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-5);
    align-items: start;
  }

  @container (min-width: 56rem) {
    .plan {
      grid-template-columns: minmax(15rem, 22rem) minmax(0, 1fr);
    }

    .outline {
      order: -1;
    }
  }

  .add {
    align-items: flex-end;
  }

  .add wr-field {
    flex: 1 1 10rem;
  }
`;
