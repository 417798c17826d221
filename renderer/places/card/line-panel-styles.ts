import { css } from 'lit';

/** What opens under a line: the line drawn and in words stands out, the rest follows. */
export const linePanelStyles = css`
  :host {
    container-type: inline-size;
  }

  .band {
    display: flex;
    flex-direction: column;
    gap: var(--space-2);
    min-height: 13.5rem;
    padding: var(--space-2) var(--space-3);
    border-radius: var(--round);
    background: var(--accent-wash);
    scroll-margin-block: var(--space-2);
  }

  .sentence {
    min-height: 2.9em;
    font-weight: 700;
  }

  wr-line-choices {
    --choice-room: 0.55em;
  }

  .facts,
  .leaf {
    min-height: var(--target);
  }

  .count {
    font-weight: 700;
  }

  .whole::before {
    content: '✓ ';
  }

  .bad,
  .asked {
    color: var(--bad);
  }

  .picker {
    padding: var(--space-3);
    border-radius: var(--round);
    background: var(--well);
  }

  .picker h3 {
    min-height: var(--target);
    align-content: center;
  }

  dl {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-1) var(--space-4);
    margin: 0;
    font-size: var(--text-small);
  }

  @container (min-width: 36rem) {
    dl {
      grid-template-columns: auto minmax(0, 1fr);
    }
  }

  dd {
    margin: 0;
  }

  kbd {
    overflow-wrap: anywhere;
    font-family: var(--font-code);
    font-weight: 600;
  }
`;
