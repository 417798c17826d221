import { css } from 'lit';

/** The rack's shelf along the bottom. */
export const rackStyles = css`
  .rack {
    padding: var(--space-1) 0 0;
    margin-inline: calc(-1 * var(--table-side));
    background: var(--well);
    border-top: 1px solid var(--hairline);
  }

  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-1) var(--space-4);
    min-height: var(--target);
    padding-inline: var(--table-side);
  }

  @container (max-width: 40rem) {
    .bar {
      --room: 0.5em;
    }
  }

  .verdict {
    flex: 1 1 10rem;
    line-height: 1.25;
    max-width: none;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  /* Without room beside the buttons the words have a line of their own, also while it is empty. */
  @container (max-width: 68rem) {
    .verdict {
      order: 1;
      flex-basis: 100%;
      min-height: 1.25em;
    }

    slot[name='game'] {
      display: block;
      margin-inline-start: auto;
    }
  }
`;
