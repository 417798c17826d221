import { css, html, nothing } from 'lit';
import { capital } from '../../core/base/words.ts';
import { faceOf, type Kind, KINDS, SUITS } from '../../core/tiles/kinds.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { announce } from './announcer.ts';
import { data, element, state, text } from './element.ts';
import { emit } from './emit.ts';
import { climb, rove } from './rove.ts';
import './tile/wr-tile.ts';

/** What `tile-picked` carries. */
export interface TilePicked {
  readonly kind: Kind;
}

/** The rows of the tray: a row for each suit, and one for all the rest; nine in each. */
const ROWS: readonly (readonly Kind[])[] = [
  ...SUITS.map((suit) => KINDS.filter((kind) => isOfSuit(kind, suit))),
  KINDS.filter((kind) => faceOf(kind).class !== 'number'),
];
const ORDER: readonly Kind[] = ROWS.flat();

function isOfSuit(kind: Kind, suit: string): boolean {
  const face = faceOf(kind);
  return face.class === 'number' && face.suit === suit;
}

const Base = element({
  /** How many of each kind can still be picked, by kind; 36 numbers. */
  left: data<ArrayLike<number>>(() => []),
  /** Why a kind can't be picked (beyond that none is left), for those that can't. */
  reasons: data<ReadonlyMap<Kind, string>>(() => new Map()),
  /** Why nothing at all can be picked now; empty when something can. */
  full: text(),
  label: text(partWords.tray.label),
  active: state(0),
  refusal: state(''),
});

/**
 * All 36 kinds to pick from, one click a tile, with how many are left of each. One tab stop: the
 * arrow keys, Home and End go about, Enter or Space picks. Sends `tile-picked`; a kind that can't
 * be picked says why instead.
 */
export class WrTray extends Base {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        container-type: inline-size;
        --tile-width: clamp(48px, 2.4rem, 72px);
      }

      .rows {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        max-width: 42rem;
        gap: var(--space-1);
      }

      .row {
        display: grid;
        grid-template-columns: repeat(9, minmax(0, 1fr));
        gap: var(--space-1);
      }

      @container (width < 34rem) or (width < 530px) {
        .row {
          grid-template-columns: repeat(auto-fill, minmax(calc(var(--tile-width) + 4px), 1fr));
        }
      }

      /* Low and wide: two rows beside each other. */
      @media (max-height: 760px) {
        @container (min-width: 920px) {
          .rows {
            grid-template-columns: repeat(2, minmax(0, 1fr));
            max-width: none;
            column-gap: var(--space-4);
            --tile-width: 44px;
          }

          .row {
            gap: 2px;
          }
        }
      }

      button {
        display: grid;
        justify-items: center;
        gap: 1px;
        min-width: 0;
        padding: 4px 2px 0;
        border: var(--stroke) solid transparent;
        border-radius: var(--round);
        background: transparent;
        line-height: 1.3;
        cursor: pointer;
      }

      button:hover {
        border-color: var(--accent);
        background: var(--accent-wash);
      }

      button:active {
        background: var(--well);
      }

      .left {
        color: var(--ink-soft);
        font-size: var(--text-small);
      }

      [aria-disabled='true'] {
        cursor: not-allowed;
      }

      [aria-disabled='true']:hover {
        border-color: transparent;
        background: transparent;
      }

      .refusal {
        min-height: 1.45em;
        margin: var(--space-1) 0 0;
        color: var(--ink-soft);
      }
    `,
  ];

  /** Puts the focus on the tile that had it last. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('[tabindex="0"]')?.focus();
  }

  /** Why a kind can't be picked; empty when it can. */
  reasonAgainst(kind: Kind): string {
    if (this.full !== '') return this.full;
    const reason = this.reasons.get(kind);
    if (reason !== undefined) return reason;
    return (this.left[kind] ?? 0) > 0 ? '' : partWords.tray.noneLeft;
  }

  protected override render(): unknown {
    return html`<div class="rows" role="group" aria-label=${this.label} @keydown=${this.#onKey}>
        ${ROWS.map((row) => html`<div class="row" role="none">${row.map((kind) => this.#button(kind))}</div>`)}
      </div>
      <p class="refusal">${this.full ? capital(this.full) : this.refusal}</p>`;
  }

  #button(kind: Kind): unknown {
    const count = this.left[kind] ?? 0;
    const reason = this.reasonAgainst(kind);
    return html`<button
      type="button"
      data-kind=${kind}
      tabindex=${ORDER[this.active] === kind ? '0' : '-1'}
      aria-label=${partWords.tray.left(nameOf(kind), count)}
      aria-description=${reason === '' || count === 0 ? nothing : reason}
      aria-disabled=${String(reason !== '')}
      @click=${() => this.#pick(kind)}
      @focus=${() => this.#settle(kind)}
    >
      <wr-tile .kind=${kind} .standing=${reason === '' ? 'whole' : 'missing'} aria-hidden="true"></wr-tile>
      <span class="left">${count === 0 ? '–' : count}</span>
    </button>`;
  }

  #settle(kind: Kind): void {
    this.active = ORDER.indexOf(kind);
  }

  #pick(kind: Kind): void {
    const reason = this.reasonAgainst(kind);
    this.refusal = reason === '' ? '' : `${capital(nameOf(kind))}: ${reason}.`;
    if (reason === '') emit<TilePicked>(this, 'tile-picked', { kind });
    else announce(this.refusal);
  }

  #onKey(event: KeyboardEvent): void {
    const buttons = ORDER.map((kind) => this.renderRoot.querySelector<HTMLElement>(`[data-kind="${kind}"]`));
    const next = rove(event.key, this.active, ORDER.length) ?? climb(event.key, this.active, buttons);
    if (next === null) return;
    event.preventDefault();
    buttons[next]?.focus();
  }
}

customElements.define('wr-tray', WrTray);
