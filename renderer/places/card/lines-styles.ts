import { css } from 'lit';

/** The table of lines: wide one row a line, narrow with the small cells below the line. */
export const linesStyles = css`
  :host {
    container-type: inline-size;
  }

  .grid {
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  .heads {
    display: none;
  }

  .section {
    padding: var(--space-2) var(--space-3) 0;
    border-top: var(--stroke) solid var(--edge);
  }

  .section > [role='gridcell'] {
    min-height: var(--target);
    align-content: center;
  }

  .heads + [role='rowgroup'] .section {
    border-top: 0;
  }

  .line {
    display: grid;
    grid-template-columns: 2.6rem repeat(3, minmax(0, 1fr));
    border-top: 1px solid var(--hairline);
    scroll-margin-block: var(--space-2);
  }

  /* Of a long card only what is seen is laid out. */
  .line:not(.now) {
    content-visibility: auto;
    contain-intrinsic-size: auto 3.6rem;
  }

  .line > * {
    position: relative;
    min-height: var(--target-main);
    padding: 0.4em 0.5em;
    overflow-wrap: anywhere;
  }

  .line > [role='gridcell']:not(.words) {
    cursor: pointer;
  }

  .line > .pattern {
    grid-column: 2 / -1;
  }

  .line > .slide {
    grid-column-start: 2;
  }

  .line > .alone {
    grid-column: 2 / -1;
  }

  .line > .words {
    grid-column: 2 / -1;
  }

  .place {
    font-weight: 700;
  }

  .tick {
    color: var(--good);
  }

  .now {
    border-top: var(--stroke) solid var(--accent);
    background: var(--accent-wash);
    box-shadow: inset 5px 0 0 var(--accent);
  }

  .opened {
    padding: var(--space-2) var(--space-3) var(--space-3);
    border-bottom: var(--stroke) solid var(--accent);
  }

  .opened > [role='gridcell'] {
    display: flex;
    flex-direction: column;
    gap: var(--space-2);
  }

  .here:focus {
    outline: var(--ring) solid var(--focus);
    outline-offset: -3px;
  }

  .line > .writing {
    padding: 2px;
  }

  .caption {
    display: block;
    color: var(--ink-soft);
    font-size: var(--text-small);
  }

  .pattern .caption {
    display: none;
  }

  .pattern .text {
    font-family: var(--font-code);
  }

  .fresh,
  .words {
    color: var(--ink-soft);
  }

  .words {
    font-size: var(--text-small);
  }

  .now .words {
    color: inherit;
    font-weight: 700;
  }

  .words.whole::before {
    content: '✓ ';
  }

  .line > .words.bad,
  .line > .words.asked,
  .line:not(.now) > .words.open {
    color: var(--bad);
    font-weight: 600;
  }

  input {
    display: block;
    width: 100%;
    min-height: var(--target-main);
    padding: 0.2em 0.5em;
    border: 2px solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  .add {
    align-items: flex-end;
  }

  .add wr-field {
    flex: 0 1 22rem;
  }

  @container (min-width: 44rem) {
    .heads,
    .line {
      display: grid;
      grid-template-columns: 3.2rem minmax(0, 2.2fr) minmax(6.4rem, 7.6rem) 4rem 4.2rem minmax(0, 2.1fr);
    }

    .heads > * {
      padding: 0.3em 0.5em;
      font-size: var(--text-small);
      font-weight: 700;
    }

    .line > .pattern:not(.alone),
    .line > .slide,
    .line > .words {
      grid-column: auto;
    }

    .caption {
      display: none;
    }
  }

  @media (forced-colors: active) {
    .now {
      outline: 3px solid Highlight;
      outline-offset: -3px;
    }

    .now .place {
      forced-color-adjust: none;
      background: Highlight;
      color: HighlightText;
    }
  }
`;
