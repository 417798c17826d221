import { css } from 'lit';
import { unseenRules } from '../../tokens/shared.ts';

/** The typed line: the field, the wedge under a fault, and the list of ways to go on. */
export const patternFieldStyles = css`
  :host {
    display: block;
    position: relative;
  }

  label {
    display: block;
    font-weight: 600;
  }

  p {
    margin: 0;
  }

  .hint {
    color: var(--ink-soft);
  }

  .line {
    position: relative;
    margin-top: var(--space-1);
    font-family: var(--font-code);
    font-size: var(--text-lead);
  }

  :host([bare]) .line {
    margin: 0;
    font-size: var(--text-body);
  }

  input {
    display: block;
    width: 100%;
    min-height: calc(var(--target-main) + 0.6rem);
    padding: 0.3em 12px 0.75em;
    border: 2px solid var(--edge);
    border-radius: var(--round);
    background: var(--sheet);
  }

  :host([bare]) input {
    min-height: var(--target-main);
    padding-block: 0.2em 0.55em;
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

  .said {
    min-height: 1.45em;
    margin-top: var(--space-1);
    color: var(--ink-soft);
  }

  .said.bad {
    color: var(--bad);
    font-weight: 600;
  }

  :host([bare]) .said:not(.bad) {
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
