import { css } from 'lit';

/** The head of the Card place, and what lies over it while a file is dragged. */
export const placeHeadStyles = css`
  .page {
    max-width: 80rem;
    gap: var(--space-4);
  }

  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
    min-height: var(--target-main);
  }

  .which {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 var(--space-4);
    min-width: 0;
  }

  .now {
    overflow-wrap: anywhere;
  }

  .used {
    color: var(--accent);
    font-weight: 700;
  }

  .steps {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2);
  }

  .kept {
    min-width: 6.5em;
    text-align: end;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  [data-card-saved='saved']::before {
    content: '✓ ';
  }

  [data-card-saved='failed'] {
    color: var(--bad);
    font-weight: 700;
  }

  .demo {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-3);
    padding: var(--space-3) var(--space-4);
    border: var(--stroke) solid var(--accent);
    border-inline-start-width: 8px;
    border-radius: var(--round);
    background: var(--accent-wash);
  }

  .demo p {
    flex: 1 1 16rem;
  }

  .drop {
    display: none;
  }

  .drop.shown {
    position: fixed;
    inset: 0;
    z-index: 20;
    display: grid;
    place-items: center;
    border: 6px dashed var(--accent);
    background: rgb(18 16 13 / 55%);
    pointer-events: none;
  }

  .drop span {
    padding: var(--space-4) var(--space-5);
    border-radius: var(--round);
    background: var(--sheet);
    font-size: var(--text-lead);
    font-weight: 700;
  }
`;
