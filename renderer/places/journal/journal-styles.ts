import { css } from 'lit';

/** The list of games, and what the Journal's parts share. */
export const journalStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
  }

  .games {
    display: flex;
    flex-direction: column;
    padding: 0;
    list-style: none;
  }

  .games li {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    align-items: center;
    gap: var(--space-2) var(--space-4);
    max-width: none;
    padding: var(--space-3) 0;
    border-top: 1px solid var(--hairline);
  }

  .games .over {
    grid-column: 1 / -1;
  }

  .when,
  .result {
    display: flex;
    flex-direction: column;
    min-width: 0;
    overflow-wrap: anywhere;
  }

  .tags {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-2);
    margin-top: var(--space-1);
  }

  .tags span {
    padding: 0 0.5em;
    border: 1px solid var(--edge);
    border-radius: var(--round-small);
    font-size: var(--text-small);
  }

  .outcome {
    font-weight: 700;
  }

  .outcome.won::before {
    content: '★ ';
  }

  .outcome.won {
    color: var(--good);
  }

  q {
    color: var(--ink-soft);
  }

  .acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2);
  }

  a.look {
    display: inline-grid;
    place-items: center;
    min-height: var(--target);
    min-width: var(--target);
    padding: 0.35em 1em;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
    color: var(--ink);
    font-weight: 600;
    line-height: 1.25;
    text-decoration: none;
  }

  a.look:hover {
    border-color: var(--accent);
    background: var(--accent-wash);
  }

  em {
    font-style: normal;
    font-weight: 700;
    color: var(--accent);
  }

  .pages {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-3);
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-3);
  }

  /* Its room stays when it goes. */
  .progress {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-3);
    min-height: var(--target);
  }

  progress {
    width: 14rem;
    max-width: 100%;
    height: 1rem;
    accent-color: var(--accent);
  }

  section {
    align-items: stretch;
  }

  section > wr-button {
    align-self: flex-start;
  }

  @container (min-width: 52rem) {
    .games li {
      grid-template-columns: minmax(0, 4fr) minmax(0, 3fr) auto;
    }
  }

  @media print {
    wr-button,
    nav,
    .acts,
    .progress {
      display: none;
    }

    section {
      padding: 0;
      border: 0;
      background: none;
    }
  }
`;
