import { css } from 'lit';

/** A place that is a page to read from top to bottom. */
export const placeStyles = css`
  :host {
    display: block;
  }

  .page {
    display: flex;
    flex-direction: column;
    gap: var(--space-5);
    max-width: 62rem;
    margin-inline: auto;
    padding: var(--space-5) 16px var(--space-6);
  }

  h1,
  h2,
  p {
    margin: 0;
  }

  h1 {
    font-size: var(--text-display);
    line-height: 1.2;
  }

  h2 {
    font-size: var(--text-lead);
  }

  section {
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    gap: var(--space-4);
    padding: clamp(12px, 4cqi, var(--space-5));
    background: var(--sheet);
    border: 1px solid var(--hairline);
    border-radius: var(--round-large);
  }

  section > * {
    max-width: 100%;
  }

  p,
  li {
    max-width: min(65ch, 100%);
    overflow-wrap: break-word;
  }

  .soft {
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  ul {
    margin: 0;
    padding-inline-start: var(--space-5);
  }

  code {
    font-family: var(--font-code);
    overflow-wrap: anywhere;
  }
`;
