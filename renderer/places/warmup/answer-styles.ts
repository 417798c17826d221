import { css } from 'lit';

/** The answer: the verdict on top, the rest in two columns where there is room. */
export const answerStyles = css`
  :host {
    container-type: inline-size;
    --explain-wrap: normal;
  }

  .answer {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4) var(--space-6);
  }

  @container (min-width: 54rem) {
    .answer {
      grid-template-columns: minmax(0, 4fr) minmax(0, 5fr);
    }
  }

  .column {
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
    min-width: 0;
  }

  section {
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    gap: var(--space-2);
    min-width: 0;
  }

  .verdict {
    padding-inline-start: var(--space-4);
    border-inline-start: 8px solid var(--edge);
  }

  .verdict.best,
  .verdict.equal {
    border-inline-start-color: var(--good);
  }

  .verdict.slip {
    border-inline-start-color: var(--warn);
    border-inline-start-style: double;
  }

  .verdict.costly {
    border-inline-start-color: var(--bad);
    border-inline-start-style: dashed;
  }

  .headline:focus {
    outline: none;
  }

  /* The verdict is shown at any width, though the reading hides its own heading in a narrow column. */
  .waiting,
  .headline {
    position: static;
    width: auto;
    height: auto;
    overflow: visible;
    clip-path: none;
    font-size: var(--text-title);
  }

  wr-explain {
    --explain-wrap: normal;
  }

  /* On one line with the words above it: the room for a finger stands out to the left. */
  .verdict wr-explain {
    margin-inline-start: -0.5em;
  }

  .reasons li::before {
    content: '· ';
  }

  .reading,
  .hands {
    width: 100%;
  }

  .hands li {
    contain: none;
  }
`;
