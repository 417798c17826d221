import { css } from 'lit';

/** Choices with their figures, each of which explains itself. */
export const figureStyles = css`
  :host {
    display: block;
  }

  .counted {
    margin-block: var(--space-1);
  }

  li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-3);
    padding-block: var(--space-1);
    border-top: 1px solid var(--hairline);
  }

  .name {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
    font-size: var(--text-small);
  }

  .tiles {
    --tile-width: clamp(33px, 1.83rem, max(33px, 4.4vh));
    display: inline-flex;
    gap: 3px;
    min-width: 105px;
  }

  .numbers,
  .ahead {
    font-size: var(--text-small);
    --explain-wrap: normal;
    --explain-weight: 400;
  }

  .progress {
    min-height: var(--target);
  }

  wr-explain p + p {
    margin-top: var(--space-2);
  }
`;
