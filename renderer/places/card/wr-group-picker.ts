import { css, html, LitElement, nothing } from 'lit';
import type { GroupDraft } from '../../../core/card/draft.ts';
import { MOVEMENTS, OPEN_SUITS } from '../../../core/card/pattern.ts';
import { SUITS } from '../../../core/tiles/kinds.ts';
import { emit } from '../../parts/emit.ts';
import { rove } from '../../parts/rove.ts';
import '../../parts/tile/wr-tile.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import { isShown, SYMBOL_ROWS, type SymbolButton, withButton } from './group-symbols.ts';

const words = cardWords.group;
const BUTTONS: readonly SymbolButton[] = SYMBOL_ROWS.flat();

/** What `group-drafted` carries; `whole` when a tile was chosen, so that a new group is complete. */
export interface GroupDrafted {
  readonly draft: GroupDraft;
  readonly whole: boolean;
}

/**
 * All choices for one group: how many, what stands in it, its suit, its movement. For a new group
 * the choice of a tile completes it. Sends `group-drafted`.
 */
export class WrGroupPicker extends LitElement {
  static override properties = {
    draft: { attribute: false },
    adding: { type: Boolean },
    suit: {},
    active: { state: true },
  };

  declare draft: GroupDraft;
  /** The draft is a group that is not in the line yet: no tile is marked as chosen. */
  declare adding: boolean;
  /** The suit for the next tile that needs one. */
  declare suit: GroupDraft['suit'];
  declare protected active: number;

  static override styles = [
    sharedStyles,
    cardStyles,
    css`
      .rows {
        display: flex;
        flex-direction: column;
        gap: var(--space-1);
        --tile-width: clamp(34px, 1.7rem, 44px);
      }

      .tiles {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1);
      }

      button {
        display: grid;
        place-items: center;
        min-width: max(48px, 2.6rem);
        min-height: max(48px, 2.6rem);
        padding: 4px 8px;
        border: var(--stroke) solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
        font-weight: 600;
        cursor: pointer;
      }

      .number {
        font-size: var(--text-title);
      }

      button:hover {
        border-color: var(--accent);
        background: var(--accent-wash);
      }

      [aria-pressed='true'] {
        border-color: var(--accent);
        background: var(--accent-wash);
        box-shadow: inset 0 -4px 0 var(--accent);
      }

      .label {
        font-weight: 600;
      }

      @media (forced-colors: active) {
        [aria-pressed='true'] {
          forced-color-adjust: none;
          background: Highlight;
          color: HighlightText;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.adding = false;
    this.suit = 'a';
    this.active = 0;
  }

  protected override render(): unknown {
    return html`<div class="stack">${this.#size()} ${this.#suit()} ${this.#symbols()} ${this.#movement()}</div>`;
  }

  #size(): unknown {
    return html`<wr-choice
      label=${words.size}
      .options=${words.sizes.map((name, index) => ({ value: String(index + 1), label: `${index + 1} ${name}` }))}
      value=${String(this.draft.size)}
      ?disabled=${this.draft.symbol === 'NEWS' && !this.adding}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
        this.#tell({ ...this.draft, size: Number(detail.value) })}
    ></wr-choice>`;
  }

  #suit(): unknown {
    const named = { ...words.suits };
    const suits = [...OPEN_SUITS, ...SUITS];
    const none = this.draft.suit === 'none' && !this.adding;
    return html`<wr-choice
      label=${words.suit}
      .options=${suits.map((suit) => ({ value: suit, label: named[suit] }))}
      value=${none ? '' : this.draft.suit === 'none' ? this.suit : this.draft.suit}
      ?disabled=${none}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        const suit = suits.find((each) => each === detail.value) ?? 'a';
        this.#tell({ ...this.draft, suit });
      }}
    ></wr-choice>`;
  }

  #movement(): unknown {
    const moves = this.adding || (this.draft.suit !== 'none' && this.draft.symbol !== 'D');
    return html`<wr-choice
      label=${words.movement}
      .options=${MOVEMENTS.map((movement) => ({ value: movement, label: words.movements[movement] }))}
      value=${moves ? this.draft.movement : ''}
      ?disabled=${!moves}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        const movement = MOVEMENTS.find((each) => each === detail.value) ?? 'first';
        this.#tell({ ...this.draft, movement });
      }}
    ></wr-choice>`;
  }

  #symbols(): unknown {
    return html`<div role="group" aria-label=${words.what}>
      <div class="label">${words.what}</div>
      <div class="rows" @keydown=${this.#onKey}>
        ${SYMBOL_ROWS.map((row) => html`<div class="tiles">${row.map((button) => this.#button(button))}</div>`)}
      </div>
    </div>`;
  }

  #button(button: SymbolButton): unknown {
    const at = BUTTONS.indexOf(button);
    return html`<button
      type="button"
      class=${button.text.length === 1 ? 'number' : ''}
      data-at=${at}
      tabindex=${at === this.active ? '0' : '-1'}
      aria-label=${button.label}
      aria-pressed=${this.adding ? nothing : String(isShown(this.draft, button))}
      @click=${() => this.#choose(button)}
      @focus=${() => this.#settle(at)}
    >
      ${button.kind === null ? button.text : html`<wr-tile .kind=${button.kind} aria-hidden="true"></wr-tile>`}
    </button>`;
  }

  #settle(at: number): void {
    this.active = at;
  }

  #choose(button: SymbolButton): void {
    const draft = withButton(this.draft, button, this.suit);
    emit<GroupDrafted>(this, 'group-drafted', { draft, whole: true });
  }

  #tell(draft: GroupDraft): void {
    emit<GroupDrafted>(this, 'group-drafted', { draft, whole: !this.adding });
  }

  #onKey(event: KeyboardEvent): void {
    const next = rove(event.key, this.active, BUTTONS.length);
    if (next === null) return;
    event.preventDefault();
    this.renderRoot.querySelector<HTMLElement>(`[data-at="${next}"]`)?.focus();
  }
}

customElements.define('wr-group-picker', WrGroupPicker);

declare global {
  interface HTMLElementTagNameMap {
    'wr-group-picker': WrGroupPicker;
  }
}
