import { css, html, nothing } from 'lit';
import {
  ALL_SUITS,
  GROUP_TILES,
  type GroupSuit,
  type GroupTile,
  MOVEMENTS,
  type PatternGroup,
  suitIn,
  symbolOf,
  withTile,
} from '../../../core/card/pattern.ts';
import { FLOWER, type Kind, kindOf } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { data, element, flag, state, text } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { climb, rove } from '../../parts/rove.ts';
import '../../parts/tile/wr-tile.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';

const words = cardWords.group;
/** A tile that may stand in a group, as a button: drawn, or in words. */
interface TileButton {
  readonly tile: GroupTile;
  readonly label: string;
  readonly kind: Kind | null;
  /** Shown when there is no tile to draw. */
  readonly text: string;
}

/** Rows of buttons: numbers; flower, winds and dragons; open tiles. */
const ROWS: readonly (readonly TileButton[])[] = [
  GROUP_TILES.filter(({ is }) => is === 'number').map(buttonOf),
  GROUP_TILES.filter(({ is }) => is === 'flower' || is === 'wind' || is === 'dragon').map(buttonOf),
  ['open-dragon', 'suit-dragon', 'open-wind', 'news']
    .flatMap((what) => GROUP_TILES.filter(({ is }) => is === what))
    .map(buttonOf),
];
const BUTTONS: readonly TileButton[] = ROWS.flat();

function buttonOf(tile: GroupTile): TileButton {
  const named = (label: string): TileButton => ({ tile, label, kind: null, text: label });
  const drawn = (kind: Kind, label = nameOf(kind)): TileButton => ({ tile, label, kind, text: '' });
  switch (tile.is) {
    case 'number':
      return { ...named(words.number(symbolOf(tile))), text: symbolOf(tile) };
    case 'flower':
      return drawn(FLOWER, words.flower);
    case 'wind':
      return drawn(kindOf(tile.wind));
    case 'dragon':
      return drawn(kindOf(tile.dragon));
    case 'open-dragon':
      return named(words.openDragon);
    case 'suit-dragon':
      return named(words.suitDragon);
    case 'open-wind':
      return named(tile.slot === 'w' ? words.anyWind : words.otherWind);
    case 'news':
      return named(words.news);
  }
}

/** What `group-changed` carries; `whole` when a tile was chosen, so that a new group is complete. */
export interface GroupChanged {
  readonly group: PatternGroup;
  readonly whole: boolean;
}

const Base = element({
  /** A new group is a number, with its size, suit and movement. */
  group: data<PatternGroup>(),
  /** The group is not in the line yet: no tile is marked as chosen. */
  adding: flag(),
  /** The suit for the next tile that needs one. */
  suit: text<GroupSuit>('a'),
  active: state(0),
});

/**
 * All choices for one group: how many, what stands in it, its suit, its movement. For a new group
 * the choice of a tile completes it. Sends `group-changed`.
 */
export class WrGroupPicker extends Base {
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

  protected override render(): unknown {
    return html`<div class="stack">${this.#size()} ${this.#suit()} ${this.#symbols()} ${this.#movement()}</div>`;
  }

  #size(): unknown {
    const { group } = this;
    return html`<wr-choice
      label=${words.size}
      .options=${words.sizes.map((name, index) => ({ value: String(index + 1), label: `${index + 1} ${name}` }))}
      value=${String(group.size)}
      ?disabled=${group.tile.is === 'news'}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) =>
        this.#change({ ...group, size: Number(detail.value) })}
    ></wr-choice>`;
  }

  #suit(): unknown {
    const { tile, size } = this.group;
    const suit = suitIn(tile);
    return html`<wr-choice
      label=${words.suit}
      .options=${ALL_SUITS.map((each) => ({ value: each, label: words.suits[each] }))}
      value=${suit ?? ''}
      ?disabled=${suit === undefined}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        const chosen = ALL_SUITS.find((each) => each === detail.value) ?? 'a';
        if ('suit' in tile) this.#change({ tile: { ...tile, suit: chosen }, size });
      }}
    ></wr-choice>`;
  }

  #movement(): unknown {
    const { tile, size } = this.group;
    return html`<wr-choice
      label=${words.movement}
      .options=${MOVEMENTS.map((movement) => ({ value: movement, label: words.movements[movement] }))}
      value=${tile.is === 'number' ? tile.movement : ''}
      ?disabled=${tile.is !== 'number'}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        const movement = MOVEMENTS.find((each) => each === detail.value) ?? 'first';
        if (tile.is === 'number') this.#change({ tile: { ...tile, movement }, size });
      }}
    ></wr-choice>`;
  }

  #symbols(): unknown {
    return html`<div role="toolbar" aria-label=${words.what}>
      <div class="label">${words.what}</div>
      <div class="rows" @keydown=${this.#onKey}>
        ${ROWS.map((row) => html`<div class="tiles">${row.map((button) => this.#button(button))}</div>`)}
      </div>
    </div>`;
  }

  #button(button: TileButton): unknown {
    const at = BUTTONS.indexOf(button);
    return html`<button
      type="button"
      class=${button.text.length === 1 ? 'number' : ''}
      data-at=${at}
      tabindex=${at === this.active ? '0' : '-1'}
      aria-label=${button.label}
      aria-pressed=${this.adding ? nothing : String(isShown(this.group.tile, button.tile))}
      @click=${() => this.#choose(button)}
      @focus=${() => this.#settle(at)}
    >
      ${button.kind === null ? button.text : html`<wr-tile .kind=${button.kind} aria-hidden="true"></wr-tile>`}
    </button>`;
  }

  #settle(at: number): void {
    this.active = at;
  }

  #choose({ tile }: TileButton): void {
    const group = withTile(this.group, 'suit' in tile ? { ...tile, suit: this.suit } : tile);
    emit<GroupChanged>(this, 'group-changed', { group, whole: true });
  }

  #change(group: PatternGroup): void {
    emit<GroupChanged>(this, 'group-changed', { group, whole: !this.adding });
  }

  #onKey(event: KeyboardEvent): void {
    const buttons = [...this.renderRoot.querySelectorAll<HTMLElement>('[data-at]')];
    const next = rove(event.key, this.active, buttons.length) ?? climb(event.key, this.active, buttons);
    if (next === null) return;
    event.preventDefault();
    buttons[next]?.focus();
  }
}

/** Whether a button shows what stands in a group. */
function isShown(tile: GroupTile, button: GroupTile): boolean {
  return tile.is === button.is && symbolOf(tile) === symbolOf(button);
}

customElements.define('wr-group-picker', WrGroupPicker);
