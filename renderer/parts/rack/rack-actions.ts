import { partWords } from '../../words/parts.ts';
import { announce } from '../announcer.ts';
import { emit } from '../emit.ts';
import { answersTo, type RackKey } from './rack-keys.ts';
import { orderOf, placesOf, type RackLayout } from './rack-layout.ts';
import { adopted, after, type RackCommand, type RackState } from './rack-state.ts';
import type { PlacedTile, RackTile } from './rack-tile.ts';
import { placeWords } from './rack-words.ts';

/** What `rack-reordered` carries: the order, and the same with the spaces between, to be kept. */
export interface RackReordered {
  readonly ids: readonly string[];
  readonly placed: readonly PlacedTile[];
}

/** What `rack-selected` (all that are chosen now) and `rack-sent` (those to give) carry. */
export interface RackIds {
  readonly ids: readonly string[];
}

/** The element whose tiles are moved. */
interface RackHost extends HTMLElement {
  readonly tiles: readonly RackTile[];
  readonly limit: number;
  selected: readonly string[];
  /** Called after each action: draw anew, with the focus on the active tile. */
  done(): void;
}

/** What a person does with the rack, and what comes of it: its state, what is said, the events that go out. */
export class RackActions {
  readonly #host: RackHost;
  #state: RackState = { layout: [[]], active: null, selected: [] };

  constructor(host: RackHost) {
    this.#host = host;
  }

  get state(): RackState {
    return this.#state;
  }

  /** Takes in what was laid and chosen outside. */
  adopt(layout: RackLayout, selected: readonly string[]): void {
    this.#state = adopted(this.#state, layout, selected);
  }

  /** Moves the focus without notifying the host: it is there already, or goes there later. */
  focus(id: string): void {
    this.#state = after(this.#state, { do: 'focus', id });
  }

  obey(key: RackKey): void {
    switch (key.means) {
      case 'walk':
      case 'climb':
        return this.#go({ do: key.means, by: key.by });
      case 'end':
        return this.#go({ do: 'end', side: key.side });
      case 'jump':
        return this.#go({ do: 'jump', fits: (id) => this.#answers(id, key.to) });
      case 'step':
      case 'tier':
        return this.move({ do: key.means, by: key.by });
      case 'gap':
        return this.move({ do: 'gap' });
      case 'select':
        return this.#state.active === null ? undefined : this.choose(this.#state.active);
      case 'send':
        return this.send();
      case 'recall':
        emit(this.#host, 'rack-recalled', null);
        return undefined;
      case 'cancel':
        return this.choose(null);
    }
  }

  /** Sends the chosen tiles, or the one that was handled last. */
  send(): void {
    const { active, selected } = this.#state;
    const ids = selected.length > 0 ? selected : [active].filter((id) => id !== null);
    if (ids.length > 0) emit<RackIds>(this.#host, 'rack-sent', { ids });
  }

  /** Chooses a tile or lets it go; null lets all go. */
  choose(id: string | null): void {
    const { limit } = this.#host;
    const before = this.#state.selected;
    this.#go(id === null ? { do: 'unselect' } : { do: 'select', id, limit });
    if (id !== null && this.#state.selected === before) announce(partWords.rack.enough(limit));
    if (this.#state.selected === before || (before.length === 0 && id === null)) return;
    this.#tellSelected();
  }

  /** Changes the layout, says where the tile is now, and notifies those who listen, if anything changed. */
  move(command: RackCommand): void {
    const before = this.#state;
    this.#go(command);
    this.#say();
    if (this.#state.selected !== before.selected) this.#tellSelected();
    if (this.#state.layout === before.layout) return;
    const placed = placesOf(this.#state.layout);
    emit<RackReordered>(this.#host, 'rack-reordered', { ids: orderOf(this.#state.layout), placed });
  }

  #go(command: RackCommand): void {
    this.#state = after(this.#state, command);
    this.#host.done();
  }

  #tellSelected(): void {
    this.#host.selected = this.#state.selected;
    emit<RackIds>(this.#host, 'rack-selected', { ids: this.#state.selected });
  }

  #answers(id: string, symbol: string): boolean {
    const tile = this.#host.tiles.find((other) => other.id === id);
    return tile !== undefined && answersTo(tile.kind, symbol);
  }

  #say(): void {
    const tile = this.#host.tiles.find(({ id }) => id === this.#state.active);
    if (tile) announce(placeWords(tile.kind, tile.id, this.#state.layout));
  }
}
