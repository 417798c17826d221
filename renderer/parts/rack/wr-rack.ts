import { html, nothing, type PropertyValues } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { sharedStyles } from '../../tokens/shared.ts';
import { emit } from '../emit.ts';
import { partWords } from '../../words/parts.ts';
import { data, element, numeric, text } from '../element.ts';
import { type RackIds, RackActions } from './rack-actions.ts';
import { RACK_SHORTCUTS, rackKey } from './rack-keys.ts';
import { layoutOf, type RackLayout, type RackPlace, whereIs } from './rack-layout.ts';
import { tileIdIn } from './rack-measure.ts';
import { RackPointer } from './rack-pointer.ts';
import { rackStyles } from './rack-styles.ts';
import type { RackTile } from './rack-tile.ts';
import { drawTiers } from './rack-view.ts';

export type { RackIds, RackReordered } from './rack-actions.ts';

const Base = element({
  /** The tiles in their order, each with an identity of its own and what lies before it. */
  tiles: data<readonly RackTile[]>(() => []),
  tiers: numeric<1 | 2>(1),
  /** The tiles chosen, by id. */
  selected: data<readonly string[]>(() => []),
  /** How many may be chosen at once; with 1, choosing another moves the choice. */
  limit: numeric(3),
  label: text(partWords.rack.label),
  /** Said where tiles would be, when there are none. */
  empty: text(partWords.rack.empty),
  /** A tile dragged onto this element is sent, as Enter sends those chosen. */
  sendTo: data<Element | null>(null),
});

/**
 * The rack: a rearrangeable listbox (WAI-ARIA APG). The truth is outside: tiles come in by
 * property; `rack-reordered`, `rack-selected`, `rack-sent` and `rack-recalled` (Delete: take the
 * last one given back) go out. A move shows at once, and is put right by what comes in next.
 */
export class WrRack extends Base {
  static override styles = [sharedStyles, rackStyles];

  readonly #actions = new RackActions(this);
  #wantsFocus = false;

  readonly #pointer = new RackPointer(this);

  /** Puts the focus on the active tile, or on a tile named. */
  override focus(options?: FocusOptions & { readonly id?: string }): void {
    const id = options?.id;
    if (id !== undefined) this.#actions.focus(id);
    this.done();
  }

  /** Makes or closes the gap before the tile that was handled last; what the key "," does. */
  toggleGap(): void {
    this.#actions.move({ do: 'gap' });
  }

  /** Moves the tile that was handled last by one step; what Alt with an arrow does. */
  step(by: -1 | 1): void {
    this.#actions.move({ do: 'step', by });
  }

  /** Sends the chosen tiles, or the one that was handled last; what Enter does. */
  send(): void {
    this.#actions.send();
  }

  /** Puts tiles into a place, as dragging or clicking there does. */
  put(ids: readonly string[], place: RackPlace): void {
    if (ids.every((id) => whereIs(this.layout, id))) this.#actions.move({ do: 'put', ids, place });
  }

  /** Sends one tile, as dragging it onto `sendTo` does. */
  sendTile(id: string): void {
    if (whereIs(this.layout, id)) emit<RackIds>(this, 'rack-sent', { ids: [id] });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const relaid = changed.has('tiles') || changed.has('tiers');
    if (!relaid && !changed.has('selected')) return;
    this.#actions.adopt(relaid ? layoutOf(this.tiles, this.tiers) : this.layout, this.selected);
    this.selected = this.#actions.state.selected;
    // Lit moves nodes about, and a moved or removed node loses the focus: it is put back after.
    if (this.shadowRoot?.activeElement) this.#wantsFocus = true;
  }

  protected override updated(): void {
    if (!this.#wantsFocus) return;
    this.#wantsFocus = false;
    const tile = this.drawn(this.#actions.state.active) ?? this.renderRoot.querySelector<HTMLElement>('.rack');
    tile?.focus({ preventScroll: true });
  }

  /** How the tiles lie now. */
  get layout(): RackLayout {
    return this.#actions.state.layout;
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
      ${drawTiers({ ...this.#actions.state, tiles: this.tiles, meant, dragging, empty: this.empty })}
    </div>`;
  }

  #onFocus(event: FocusEvent): void {
    const id = tileIdIn(event);
    if (id === null || id === this.#actions.state.active) return;
    this.#actions.focus(id);
    this.requestUpdate();
  }

  #onClick(event: MouseEvent): void {
    if (this.#pointer.justDropped) return;
    const id = tileIdIn(event);
    if (id !== null) return this.#actions.choose(id);
    const place = this.#pointer.takePlace(event);
    if (place) this.put(this.selected, place);
  }

  #onKey(event: KeyboardEvent): void {
    const meaning = rackKey(event);
    if (!meaning || this.tiles.length === 0) return;
    event.preventDefault();
    this.#actions.obey(meaning);
  }

  /** After each action the focus is on the active tile. */
  done(): void {
    this.#wantsFocus = true;
    this.requestUpdate();
  }
}

customElements.define('wr-rack', WrRack);

declare global {
  interface HTMLElementTagNameMap {
    'wr-rack': WrRack;
  }
}
