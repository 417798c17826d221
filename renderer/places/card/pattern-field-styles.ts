import { css } from 'lit';
import { unseenRules } from '../../tokens/shared.ts';

/** The typed line: the field, the wedge under a fault, and the list of ways to go on. */
export const patternFieldStyles = css`
  :host {
    display: block;
    position: relative;
  }

  p {
    margin: 0;
  }

  .line {
    position: relative;
    font-family: var(--font-code);
  }

  input {
    display: block;
    width: 100%;
    min-height: var(--target-main);
    padding: 0.2em 10px 0.5em;
    border: 2px solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  [aria-invalid='true'] {
    border-color: var(--bad);
  }

  /* A wedge under the character that is wrong. */
  .pointer {
    position: absolute;
    top: calc(100% - 8px - 0.5em);
    left: clamp(14px, calc(14px + var(--at, 0) * 1ch - var(--scrolled, 0px)), calc(100% - 14px));
    width: 1ch;
    height: 0.5em;
    background: var(--bad);
    clip-path: polygon(50% 0, 100% 100%, 0 100%);
  }

  .said.bad {
    padding: 2px 8px 4px;
    color: var(--bad);
    font-weight: 600;
  }

  .said:not(.bad) {
    ${unseenRules}
  }

  ul {
    position: absolute;
    z-index: 5;
    inset-inline: 0;
    top: calc(100% + 4px);
    max-height: 21rem;
    margin: 0;
    padding: 4px;
    border: var(--stroke) solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
    font-family: var(--font);
    font-size: var(--text-body);
    list-style: none;
    overflow-y: auto;
    box-shadow: 0 6px 18px rgb(18 16 13 / 25%);
  }

  ul[hidden] {
    display: none;
  }

  li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-4);
    min-height: var(--target);
    padding: 0.25em 0.75em;
    border-radius: var(--round-small);
    cursor: pointer;
  }

  li b {
    min-width: 4.5em;
    font-family: var(--font-code);
  }

  li:hover,
  [aria-selected='true'] {
    background: var(--accent-wash);
  }

  [aria-selected='true'] {
    outline: 2px solid var(--accent);
    outline-offset: -2px;
  }

  @media (forced-colors: active) {
    .pointer {
      forced-color-adjust: none;
      background: CanvasText;
    }
  }
`;
