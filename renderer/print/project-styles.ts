import { css } from 'lit';

/** A sheet on a screen: letters and tiles that can be read from the last row. */
export const projectStyles = css`
  dialog {
    display: none;
    flex-direction: column;
    width: 100vw;
    max-width: none;
    height: 100dvh;
    max-height: none;
    margin: 0;
    padding: var(--space-4) var(--space-5);
    overflow: hidden;
    border: 0;
    background: var(--paper);
    color: var(--ink);
    font-size: clamp(1.2rem, 2.2vw, 2.2rem);
  }

  dialog[open] {
    display: flex;
    gap: var(--space-4);
  }

  /* Between a head and buttons that keep their place. */
  .problem {
    position: relative;
    flex: 1 1 0;
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
    min-height: 0;
    overflow: auto;
  }

  header,
  footer {
    flex: none;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
    font-size: var(--text-body);
  }

  footer {
    padding-top: var(--space-3);
    justify-content: center;
  }

  h1,
  h2,
  p {
    margin: 0;
  }

  h1 {
    font-size: clamp(1.3rem, 2.4vw, 2.4rem);
  }

  h2 {
    font-size: 1em;
  }

  .tiles {
    --tile-width: clamp(40px, 5.6vw, 110px);
    display: inline-flex;
    flex-wrap: wrap;
    gap: clamp(4px, 0.6vw, 12px);
    vertical-align: middle;
  }

  .small {
    --tile-width: clamp(34px, 3vw, 64px);
  }

  .step {
    display: flex;
    flex-direction: column;
    gap: var(--space-2);
    padding-top: var(--space-3);
    border-top: 1px solid var(--hairline);
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2) var(--space-4);
  }

  wr-hand {
    --tile-width: clamp(18px, 2.4vw, 48px);
  }
`;
