import { css } from 'lit';

/** The plan: a row a pass, its tiles, its numbers, and the way to use it. */
export const planStyles = css`
  .plan {
    display: flex;
    flex-direction: column;
    gap: var(--space-1);
    padding-top: var(--space-2);
    border-top: 1px solid var(--hairline);
  }

  li,
  .own {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-3);
    padding-block: var(--space-1);
    min-height: calc(var(--target) + var(--space-2));
  }

  li {
    border-top: 1px solid var(--hairline);
  }

  /* A pass: its tiles, beside them what it does in the end, which counts, and for now; at the edge its button. */
  .passes li {
    display: grid;
    grid-template: 'tiles ahead use' auto 'tiles numbers use' auto / auto minmax(0, 1fr) auto;
  }

  @container (max-width: 24rem) {
    .passes li {
      grid-template: 'tiles use' auto 'ahead ahead' auto 'numbers numbers' auto / minmax(0, 1fr) auto;
    }
  }

  .passes .tiles {
    grid-area: tiles;
  }

  .passes .numbers {
    grid-area: numbers;
  }

  .passes .ahead {
    grid-area: ahead;
    justify-self: start;
  }

  .passes wr-button {
    grid-area: use;
  }

  .tiles {
    --tile-width: 33px;
    display: inline-flex;
    gap: 3px;
    min-width: 105px;
  }

  .numbers {
    flex: 1 1 auto;
    display: flex;
    flex-wrap: wrap;
    font-size: var(--text-small);
    --explain-weight: 400;
  }

  .cost {
    min-width: min(10.4em, 100%);
  }

  wr-explain {
    --explain-wrap: normal;
  }

  /* As high while it is awaited as when it is there. */
  .ahead {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
    min-width: min(13.6em, 100%);
  }

  /* In line with the number that comes in its place. */
  .ahead.soft {
    padding-inline: 0.5em;
  }

  .ahead.best::after {
    color: var(--accent);
    font-weight: 700;
    content: '✓' / '';
  }

  .progress {
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    justify-content: center;
    min-height: var(--target);
  }

  .name {
    display: inline-flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-2);
  }

  .name .tiles {
    min-width: 0;
  }

  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }

  /* Choices that are no row of the plan: their columns are as wide while the verdict is awaited. */
  ul li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, calc(13.6 * var(--text-small))) minmax(4.2em, auto);
  }

  ul :is(.name, .ahead) {
    font-size: var(--text-small);
  }

  @container (max-width: 27rem) {
    ul li {
      grid-template-columns: minmax(0, 1fr) auto;
    }

    ul .name {
      grid-column: 1 / -1;
    }
  }

  wr-explain p + p {
    margin-top: var(--space-2);
  }
`;
