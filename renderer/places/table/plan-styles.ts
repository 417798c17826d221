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
  }

  .cost {
    min-width: 7.4em;
  }

  .ahead,
  [role='status'] {
    --explain-wrap: normal;
  }

  .ahead {
    min-width: min(10.5em, 100%);
    font-size: var(--text-small);
  }

  .name {
    flex: 1 1 12em;
  }

  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }

  wr-explain p + p {
    margin-top: var(--space-2);
  }
`;
