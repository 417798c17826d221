import { css, html, nothing } from 'lit';
import {
  GROUP_TILES,
  type GroupSuit,
  type GroupTile,
  type Movement,
  MOVEMENTS,
  OPEN_SUITS,
  type PatternGroup,
  suitIn,
  symbolOf,
} from '../../../core/card/pattern.ts';
import { kindOf, SUITS, windKind } from '../../../core/tiles/kinds.ts';
import { nameOf } from '../../../core/tiles/names.ts';
import { data, element, flag, state } from '../../parts/element.ts';
import { emit } from '../../parts/emit.ts';
import { climb, rove } from '../../parts/rove.ts';
import { tileStyles } from '../../parts/tile/drawing.ts';
import { openTileStyles } from '../../parts/tile/open-tile.ts';
import '../../parts/wr-choice.ts';
import type { ChoiceChanged } from '../../parts/wr-choice.ts';
import { sharedStyles } from '../../tokens/shared.ts';
import { cardWords } from '../../words/card.ts';
import { cardStyles } from './card-styles.ts';
import { printedTiles } from './group-tiles.ts';

const words = cardWords.group;
/** A tile that may stand in a group, as a button: drawn, or in words. */
interface TileButton {
  readonly tile: GroupTile;
  readonly label: string;
  readonly face: unknown;
}

type NumberTile = Extract<GroupTile, { is: 'number' }>;

/** Rows of buttons: the numbers of each suit, with its dragon; flower, winds and dragons; open tiles. */
function rowsOf(suits: readonly GroupSuit[], movement: Movement): readonly (readonly TileButton[])[] {
  const numbers = GROUP_TILES.filter((tile): tile is NumberTile => tile.is === 'number');
  const plain = GROUP_TILES.filter(({ is }) => is === 'flower' || is === 'wind' || is === 'dragon');
  const open = ['open-dragon', 'open-wind', 'news'].flatMap((what) => GROUP_TILES.filter(({ is }) => is === what));
  return [
    ...suits.map((suit) =>
      [...numbers.map((tile): GroupTile => ({ ...tile, suit, movement })), { is: 'suit-dragon', suit } as const].map(
        buttonOf,
      ),
    ),
    plain.map(buttonOf),
    open.map(buttonOf),
  ];
}

function buttonOf(tile: GroupTile): TileButton {
  const label = labelOf(tile);
  if (tile.is === 'news') return { tile, label, face: label };
  return { tile, label, face: printedTiles({ tile, size: 1 }) };
}

function labelOf(tile: GroupTile): string {
  switch (tile.is) {
    case 'number':
      return words.number(symbolOf(tile), words.suits[tile.suit]);
    case 'suit-dragon':
      return words.suitDragon(words.suits[tile.suit]);
    case 'flower':
      return words.flower;
    case 'wind':
      return nameOf(windKind(tile.wind));
    case 'dragon':
      return nameOf(kindOf(tile.dragon));
    case 'open-dragon':
      return words.openDragon;
    case 'open-wind':
      return tile.slot === 'w' ? words.anyWind : words.otherWind;
    case 'news':
      return words.news;
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
  /** Whether suits are offered by name; without a choice, as the group has it. */
  named: state<boolean | null>(null),
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
    tileStyles,
    openTileStyles,
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
        min-width: max(48px, 2.4rem);
        min-height: max(48px, 2.4rem);
        padding: 3px 6px;
        border: var(--stroke) solid var(--edge);
        border-radius: var(--round);
        background: var(--sheet);
        font-weight: 600;
        cursor: pointer;
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
    const { tile } = this.group;
    return html`<div class="stack close">
      <div class="row">${this.#size()} ${this.#suits()}</div>
      ${this.#symbols()} ${tile.is === 'number' ? this.#movement(tile) : nothing}
    </div>`;
  }

  get #isNamed(): boolean {
    const suit = suitIn(this.group.tile);
    return this.named ?? (!this.adding && SUITS.some((named) => named === suit));
  }

  get #rows(): readonly (readonly TileButton[])[] {
    const { tile } = this.group;
    return rowsOf(this.#isNamed ? SUITS : OPEN_SUITS, tile.is === 'number' ? tile.movement : 'first');
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

  #suits(): unknown {
    return html`<wr-choice
      label=${words.suit}
      .options=${[
        { value: 'open', label: words.openSuits },
        { value: 'named', label: words.namedSuits },
      ]}
      value=${this.#isNamed ? 'named' : 'open'}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => (this.named = detail.value === 'named')}
    ></wr-choice>`;
  }

  #movement(tile: NumberTile): unknown {
    return html`<wr-choice
      label=${words.movement}
      .options=${MOVEMENTS.map((movement) => ({ value: movement, label: words.movements[movement] }))}
      value=${tile.movement}
      @choice-changed=${({ detail }: CustomEvent<ChoiceChanged>) => {
        const movement = MOVEMENTS.find((each) => each === detail.value) ?? 'first';
        this.#change({ tile: { ...tile, movement }, size: this.group.size });
      }}
    ></wr-choice>`;
  }

  #symbols(): unknown {
    return html`<div role="toolbar" aria-label=${words.what}>
      <div class="label">${words.what}</div>
      <div class="rows" @keydown=${this.#onKey}>
        ${this.#rows.map((row, at, all) => {
          const before = all.slice(0, at).flat().length;
          return html`<div class="tiles">${row.map((button, place) => this.#button(button, before + place))}</div>`;
        })}
      </div>
    </div>`;
  }

  #button(button: TileButton, at: number): unknown {
    return html`<button
      type="button"
      data-at=${at}
      tabindex=${at === this.active ? '0' : '-1'}
      aria-label=${button.label}
      aria-pressed=${this.adding ? nothing : String(isShown(this.group.tile, button.tile))}
      @click=${() => this.#choose(button)}
      @focus=${() => this.#settle(at)}
    >
      ${button.face}
    </button>`;
  }

  #settle(at: number): void {
    this.active = at;
  }

  #choose({ tile }: TileButton): void {
    const { size } = this.group;
    emit<GroupChanged>(this, 'group-changed', { group: { tile, size: tile.is === 'news' ? 1 : size }, whole: true });
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
  return tile.is === button.is && symbolOf(tile) === symbolOf(button) && suitIn(tile) === suitIn(button);
}

customElements.define('wr-group-picker', WrGroupPicker);
