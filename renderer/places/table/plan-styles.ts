import { css } from 'lit';

/** The list of passes: a row a pass, its tiles and what it costs; under it what is rarer. */
export const planStyles = css`
  :host {
    display: contents;
  }

  .side {
    grid-area: side;
    container-type: inline-size;
    display: flex;
    flex-direction: column;
    gap: var(--space-2);
  }

  .side > * {
    flex: none;
  }

  .side h2 {
    padding-block: var(--space-1);
  }

  .side > h2,
  .side .heading {
    border-bottom: 1px solid var(--hairline);
  }

  .side .heading {
    min-height: var(--target);
    flex-wrap: nowrap;
    padding-block: 0;
    padding-inline-start: 0;
  }

  .heading h2 {
    flex: 1 1 auto;
  }

  .heading wr-explain {
    font-size: var(--text-small);
    --explain-wrap: normal;
  }

  .list li {
    min-height: 54px;
    border-bottom: 1px solid var(--hairline);
    color: var(--ink-soft);
  }

  .list .filler {
    border-color: transparent;
  }

  /* Equals stand on one ground. */
  .equal {
    background: var(--accent-wash);
  }

  .row {
    width: 100%;
    gap: 0 var(--space-4);
    min-height: 44px;
    padding: 4px var(--space-2);
    color: var(--ink);
  }

  button.row {
    border: 0;
    border-radius: var(--round-small);
    background: transparent;
    text-align: start;
    cursor: pointer;
  }

  button.row:hover {
    background: var(--accent-wash);
    box-shadow: inset 0 0 0 2px var(--accent);
  }

  .name {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
    font-size: var(--text-small);
    white-space: nowrap;
  }

  .tiles {
    --tile-width: clamp(33px, 1.83rem, max(33px, 4.4vh));
    display: inline-flex;
    gap: 3px;
  }

  .size {
    flex: 1 1 9em;
    line-height: 1.25;
  }

  .size .soft {
    display: block;
  }

  .foot {
    display: flex;
    flex-direction: column;
    gap: var(--space-2);
    margin-top: auto;
    padding-block: var(--space-2);
  }

  .foot .row {
    padding-inline: 0;
  }

  .foot .soft {
    flex: 1 1 10rem;
  }

  /* Three rows at least, and the half of one more, which tells that the list goes on; what stands below keeps its place, however many there are. The sheet is as wide as the window. */
  @media (min-width: 900px) {
    .side > .list {
      flex: 1 0 calc(var(--target) + 3.5 * 54px);
      height: 0;
      overflow: auto;
    }
  }

  @container (min-width: 900px) {
    .side {
      contain: strict;
      overflow: auto;
      min-height: 0;
    }
  }
`;
