import { css } from 'lit';
import { unseenRules } from './shared.ts';

/** A table of choices: where there is no room for its columns, each row is a block and names its figures (`data-name`). */
export const foldStyles = css`
  .fold {
    container-type: inline-size;
    width: 100%;
  }

  .fold .tiles {
    flex-wrap: nowrap;
  }

  @container (max-width: 32rem) {
    .fold table,
    .fold tbody {
      display: block;
    }

    .fold .tiles {
      flex-wrap: wrap;
    }

    .fold thead {
      ${unseenRules}
    }

    .fold tr {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: var(--space-1) var(--space-4);
      padding-block: var(--space-2);
      border-bottom: 1px solid var(--hairline);
    }

    .fold td {
      padding: 0;
      border: 0;
      text-align: start;
    }

    .fold td:first-child {
      flex-basis: 100%;
    }

    .fold .figure {
      white-space: normal;
    }

    .fold [data-name]::before {
      content: attr(data-name) ' ';
      color: var(--ink-soft);
    }
  }
`;
