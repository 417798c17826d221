import { css } from 'lit';

/** Quick entry: wide as a table, narrow with each line's small cells below its pattern. */
export const gridStyles = css`
  :host {
    container-type: inline-size;
  }

  .grid {
    display: flex;
    flex-direction: column;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  [role='row'] {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    border-top: 1px solid var(--hairline);
  }

  [role='row'].first {
    display: none;
  }

  [role='gridcell'] {
    position: relative;
    min-height: var(--target-main);
    padding: 0.4em 0.5em;
    overflow-wrap: anywhere;
    cursor: pointer;
    scroll-margin-block: 1rem 16rem;
  }

  [role='gridcell']:first-child,
  .note {
    grid-column: 1 / -1;
  }

  [role='gridcell']:focus {
    outline: var(--ring) solid var(--focus);
    outline-offset: -3px;
    background: var(--accent-wash);
  }

  .writing {
    padding: 0;
  }

  .caption {
    display: block;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .pattern .text {
    font-family: var(--font-code);
  }

  .fresh {
    color: var(--ink-soft);
    font-style: italic;
  }

  input {
    display: block;
    width: 100%;
    min-height: var(--target-main);
    padding: 0.3em 0.6em;
    border: 2px solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  [role='columnheader'] {
    padding: 0.4em 0.5em;
    font-weight: 700;
  }

  .live {
    min-height: 8.5rem;
    padding: var(--space-3);
  }

  @container (min-width: 60rem) {
    [role='row'],
    [role='row'].first {
      display: grid;
      grid-template-columns: minmax(0, 3fr) 8rem 5rem 7.5rem 8rem minmax(0, 1.5fr) 6rem;
      border-top: 1px solid var(--hairline);
    }

    [role='row'].first {
      border-top: 0;
    }

    [role='gridcell']:first-child,
    .note {
      grid-column: auto;
    }

    [role='gridcell'] + [role='gridcell'] {
      border-inline-start: 1px solid var(--hairline);
    }

    .caption {
      display: none;
    }
  }

  @media (min-height: 40em) {
    @container (min-width: 60rem) {
      .live {
        position: sticky;
        bottom: 0;
        z-index: 2;
      }
    }
  }
`;
