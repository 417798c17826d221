import { css } from 'lit';

/** The panels of play. */
export const playStyles = css`
  :host {
    container-type: inline-size;
  }

  .sheet {
    padding: var(--space-4);
    background: var(--sheet);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
    gap: var(--space-3);
  }

  h2 {
    font-size: var(--text-lead);
  }

  @container (max-width: 29rem) {
    .sheet {
      padding: var(--space-3);
    }
  }

  @container (24rem < width < 33rem) {
    wr-tray {
      --tile-width: 40px;
    }
  }

  .group {
    --tile-width: 40px;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px;
    min-height: 54px;
  }

  .small {
    --tile-width: 30px;
  }

  .tiles {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 3px;
  }

  .refusal:empty {
    display: none;
  }

  .open li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-1) var(--space-3);
    min-height: var(--target);
    padding-block: var(--space-1);
    border-top: 1px solid var(--hairline);
  }

  .open .who {
    min-width: 4.5em;
    font-weight: 600;
  }

  .counts {
    display: grid;
    grid-template-columns: repeat(9, minmax(0, 1fr));
    gap: var(--space-1);
    --tile-width: clamp(24px, 7cqi, 34px);
  }

  .counts li {
    display: grid;
    justify-items: center;
    font-size: var(--text-small);
    line-height: 1.3;
  }

  .counts .none {
    color: var(--ink-soft);
    font-weight: 600;
  }

  @container (max-width: 24rem) {
    .counts {
      grid-template-columns: repeat(auto-fill, minmax(3rem, 1fr));
    }
  }
`;
