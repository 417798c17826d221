import { css } from 'lit';

/** The answer: the verdict on top, the rest in two columns where there is room. */
export const answerStyles = css`
  .answer {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4) var(--space-5);
    container-type: inline-size;
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
    order: 0;
    flex: none;
    color: var(--ink);
    font-size: var(--text-body);
    line-height: var(--line);
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

  .headline {
    font-size: var(--text-title);
  }

  .reasons li::before {
    content: '· ';
  }

  .plan li {
    padding-block: 2px;
  }

  .reading,
  .hands {
    width: 100%;
  }

  .hands li {
    contain: none;
  }
`;
