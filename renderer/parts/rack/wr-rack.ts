import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { sharedStyles } from '../../tokens/shared.ts';
import { announce } from '../announcer.ts';
import { emit } from '../emit.ts';
import { partWords } from '../../words/parts.ts';
import { answersTo, RACK_SHORTCUTS, type RackKey, rackKey } from './rack-keys.ts';
import { layoutOf, orderOf, placesOf, type RackLayout, type RackPlace, whereIs } from './rack-layout.ts';
import { tileIdIn } from './rack-measure.ts';
import { RackPointer } from './rack-pointer.ts';
import { adopted, after, type RackCommand, type RackState } from './rack-state.ts';
import { rackStyles } from './rack-styles.ts';
import type { PlacedTile, RackTile } from './rack-tile.ts';
import { drawTiers } from './rack-view.ts';
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

/**
 * The rack: a rearrangeable listbox (WAI-ARIA APG). The truth is outside: tiles come in by
 * property; `rack-reordered`, `rack-selected`, `rack-sent` and `rack-recalled` (Delete: take the
 * last one given back) go out. A move shows at once, and is put right by what comes in next.
 */
export class WrRack extends LitElement {
  static override properties = {
    tiles: { attribute: false },
    tiers: { type: Number },
    selected: { attribute: false },
    limit: { type: Number },
    label: {},
    empty: {},
    sendTo: { attribute: false },
  };

  /** The tiles in their order, each with an identity of its own and what lies before it. */
  declare tiles: readonly RackTile[];
  declare tiers: 1 | 2;
  /** The tiles chosen, by id. */
  declare selected: readonly string[];
  /** How many may be chosen at once; with 1, choosing another moves the choice. */
  declare limit: number;
  declare label: string;
  /** Said where tiles would be, when there are none. */
  declare empty: string;
  /** A tile dragged onto this element is sent, as Enter sends those chosen. */
  declare sendTo: Element | null;

  static override styles = [sharedStyles, rackStyles];

  #state: RackState = { layout: [[]], active: null, selected: [] };
  #wantsFocus = false;

  readonly #pointer = new RackPointer(this);

  constructor() {
    super();
    this.tiles = [];
    this.tiers = 1;
    this.selected = [];
    this.limit = 3;
    this.label = partWords.rack.label;
    this.empty = partWords.rack.empty;
    this.sendTo = null;
  }

  /** Puts the focus on the active tile, or on a tile named. */
  override focus(options?: FocusOptions & { readonly id?: string }): void {
    const id = options?.id;
    if (id !== undefined) this.#state = after(this.#state, { do: 'focus', id });
    this.#wantsFocus = true;
    this.requestUpdate();
  }

  /** Makes or closes the gap before the tile that was handled last; what the key "," does. */
  toggleGap(): void {
    this.#move({ do: 'gap' });
  }

  /** Moves the tile that was handled last by one step; what Alt with an arrow does. */
  step(by: -1 | 1): void {
    this.#move({ do: 'step', by });
  }

  /** Sends the chosen tiles, or the one that was handled last; what Enter does. */
  send(): void {
    const ids = this.selected.length > 0 ? this.selected : [this.#state.active].filter((id) => id !== null);
    if (ids.length > 0) emit<RackIds>(this, 'rack-sent', { ids });
  }

  /** Puts tiles into a place, as dragging or clicking there does. */
  put(ids: readonly string[], place: RackPlace): void {
    if (ids.every((id) => whereIs(this.#state.layout, id))) this.#move({ do: 'put', ids, place });
  }

  /** Sends one tile, as dragging it onto `sendTo` does. */
  sendTile(id: string): void {
    if (whereIs(this.#state.layout, id)) emit<RackIds>(this, 'rack-sent', { ids: [id] });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const relaid = changed.has('tiles') || changed.has('tiers');
    if (!relaid && !changed.has('selected')) return;
    const layout = relaid ? layoutOf(this.tiles, this.tiers) : this.#state.layout;
    this.#state = adopted(this.#state, layout, this.selected);
    this.selected = this.#state.selected;
    // Lit moves nodes about, and a moved or removed node loses the focus: it is put back after.
    if (this.shadowRoot?.activeElement) this.#wantsFocus = true;
  }

  protected override updated(): void {
    if (!this.#wantsFocus) return;
    this.#wantsFocus = false;
    const tile = this.drawn(this.#state.active) ?? this.renderRoot.querySelector<HTMLElement>('.rack');
    tile?.focus({ preventScroll: true });
  }

  /** How the tiles lie now. */
  get layout(): RackLayout {
    return this.#state.layout;
  }

  /** A tile as drawn, by its id. */
  drawn(id: string | null): HTMLElement | null {
    return id === null ? null : this.renderRoot.querySelector(`[data-id="${CSS.escape(id)}"]`);
  }

  protected override render(): unknown {
    const full = this.tiles.length > 0;
    const { meant, dragging } = this.#pointer;
    const picking = this.selected.length > 0 || dragging !== null;
    return html`<div
      class=${classMap({ rack: true, picking })}
      role=${full ? 'listbox' : 'group'}
      aria-label=${this.label}
      aria-multiselectable=${full ? 'true' : nothing}
      aria-orientation=${full ? 'horizontal' : nothing}
      aria-keyshortcuts=${full ? RACK_SHORTCUTS : nothing}
      tabindex=${full ? nothing : '-1'}
      @click=${this.#onClick}
      @keydown=${this.#onKey}
      @focusin=${this.#onFocus}
      @pointermove=${(event: PointerEvent) => this.#pointer.hover(event)}
      @pointerleave=${() => this.#pointer.leave()}
    >
      ${drawTiers({ ...this.#state, tiles: this.tiles, meant, dragging, empty: this.empty })}
    </div>`;
  }

  // What a person does

  #onFocus(event: FocusEvent): void {
    const id = tileIdIn(event);
    if (id === null || id === this.#state.active) return;
    this.#state = after(this.#state, { do: 'focus', id });
    this.requestUpdate();
  }

  #onClick(event: MouseEvent): void {
    if (this.#pointer.justDropped) return;
    const id = tileIdIn(event);
    if (id !== null) return this.#choose(id);
    const place = this.#pointer.takePlace(event);
    if (place) this.put(this.selected, place);
  }

  #onKey(event: KeyboardEvent): void {
    const meaning = rackKey(event);
    if (!meaning || this.tiles.length === 0) return;
    event.preventDefault();
    this.#obey(meaning);
  }

  #obey(key: RackKey): void {
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
        return this.#move({ do: key.means, by: key.by });
      case 'gap':
        return this.#move({ do: 'gap' });
      case 'select':
        return this.#state.active === null ? undefined : this.#choose(this.#state.active);
      case 'send':
        return this.send();
      case 'recall':
        emit(this, 'rack-recalled', null);
        return undefined;
      case 'cancel':
        return this.#choose(null);
    }
  }

  #answers(id: string, symbol: string): boolean {
    const tile = this.tiles.find((other) => other.id === id);
    return tile !== undefined && answersTo(tile.kind, symbol);
  }

  // What comes of it

  #go(command: RackCommand): void {
    this.#state = after(this.#state, command);
    this.#wantsFocus = true;
    this.requestUpdate();
  }

  /** Chooses a tile or lets it go; null lets all go. */
  #choose(id: string | null): void {
    const before = this.#state.selected;
    this.#go(id === null ? { do: 'unselect' } : { do: 'select', id, limit: this.limit });
    if (id !== null && this.#state.selected === before) announce(partWords.rack.enough(this.limit));
    if (this.#state.selected === before || (before.length === 0 && id === null)) return;
    this.selected = this.#state.selected;
    emit<RackIds>(this, 'rack-selected', { ids: this.selected });
  }

  /** Changes the layout, says where the tile is now, and tells who listens, if anything changed. */
  #move(command: RackCommand): void {
    const before = this.#state;
    this.#go(command);
    this.#say();
    if (this.#state.selected !== before.selected) {
      this.selected = this.#state.selected;
      emit<RackIds>(this, 'rack-selected', { ids: this.selected });
    }
    if (this.#state.layout === before.layout) return;
    const placed = placesOf(this.#state.layout);
    emit<RackReordered>(this, 'rack-reordered', { ids: orderOf(this.#state.layout), placed });
  }

  #say(): void {
    const tile = this.tiles.find(({ id }) => id === this.#state.active);
    if (tile) announce(placeWords(tile.kind, tile.id, this.#state.layout));
  }
}

customElements.define('wr-rack', WrRack);

declare global {
  interface HTMLElementTagNameMap {
    'wr-rack': WrRack;
  }
}
