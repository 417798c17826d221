import { html, nothing, type PropertyValues } from 'lit';
import { capital } from '../../core/base/words.ts';
import type { Kind } from '../../core/tiles/kinds.ts';
import { nameOf } from '../../core/tiles/names.ts';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { announce } from './announcer.ts';
import { DragController } from './drag-controller.ts';
import type { DragPoint } from './drag.ts';
import { data, element, flag, numeric, state, text } from './element.ts';
import { emit } from './emit.ts';
import { isWithin } from './rack/rack-geometry.ts';
import type { RackTile } from './rack/rack-tile.ts';
import { rove } from './rove.ts';
import { slotsStyles } from './slots-styles.ts';
import './tile/wr-tile.ts';

/** What `slots-returned` carries: tiles taken back to the rack. */
export interface SlotsReturned {
  readonly ids: readonly string[];
}

const Base = element({
  tiles: data<readonly RackTile[]>(() => []),
  /** What is offered to be given, while nothing lies here. */
  offered: data<readonly Kind[]>(() => []),
  /** How many tiles this pass takes. */
  places: numeric(3),
  /** How many of them are handed on unseen. */
  blind: numeric(0),
  label: text(partWords.slots.label),
  disabled: flag(),
  /** A tile dragged onto this element is taken back, as a click on it does. */
  returnTo: data<Element | null>(null),
  active: state(0),
  dragging: state<string | null>(null),
});

/**
 * The tray of a pass: a listbox of three places (or fewer). Left, Right, Home and End move; Delete,
 * Backspace, Enter or a click takes a tile back; Escape takes all back. Sends `slots-returned`, and
 * says what lies in it whenever that changes.
 */
export class WrSlots extends Base {
  static override styles = [sharedStyles, slotsStyles];

  #wantsFocus = false;

  readonly #drag = new DragController(this, {
    pressedId: (event) => (this.disabled ? null : slotIdIn(event)),
    started: (id) => this.#startDragging(id),
    moved: (_, by) => {
      this.style.setProperty('--drag-x', `${by.x}px`);
      this.style.setProperty('--drag-y', `${by.y}px`);
    },
    dropped: (id, at) => this.#dropped(id, at),
    restored: () => this.#stopDragging(),
  });

  /** Puts the focus on the place that had it last. */
  override focus(): void {
    this.#wantsFocus = true;
    this.requestUpdate();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.active = Math.min(this.active, Math.max(0, this.places - 1));
    if (!changed.has('tiles') && !changed.has('blind') && !changed.has('offered')) return;
    if (this.hasUpdated && (changed.has('tiles') || changed.has('blind')))
      announce(slotsWords(this.label, this.#slots));
    if (this.shadowRoot?.activeElement) this.#wantsFocus = true;
  }

  protected override updated(): void {
    this.renderRoot.querySelector<HTMLElement>('.moving')?.togglePopover(true);
    if (!this.#wantsFocus) return;
    this.#wantsFocus = false;
    this.renderRoot.querySelector<HTMLElement>('[tabindex="0"]')?.focus({ preventScroll: true });
  }

  protected override render(): unknown {
    return html`<div
        class="slots"
        role="listbox"
        aria-label=${this.label}
        aria-orientation="horizontal"
        aria-keyshortcuts="Delete Escape"
        @keydown=${this.#onKey}
      >
        ${this.#slots.map((slot, at) => this.#slot(slot, at))}
      </div>
      ${this.#moving()}`;
  }

  get #slots(): readonly Slot[] {
    return slotsOf(this.tiles, this.places, this.blind, this.tiles.length === 0 ? this.offered : []);
  }

  #moving(): unknown {
    const tile = this.tiles.find(({ id }) => id === this.dragging);
    if (tile === undefined) return nothing;
    return html`<div class="moving" popover="manual" aria-hidden="true"><wr-tile .kind=${tile.kind}></wr-tile></div>`;
  }

  #slot(slot: Slot, at: number): unknown {
    const id = slot.holds === 'tile' ? slot.tile.id : null;
    // oxlint-disable-next-line lit-a11y/click-events-have-key-events -- the list hears the keys
    return html`<div
      class="slot ${slot.holds} ${id !== null && id === this.dragging ? 'dragging' : ''}"
      role="option"
      data-slot=${id ?? nothing}
      tabindex=${at === this.active ? '0' : '-1'}
      aria-selected="false"
      aria-disabled=${String(slot.holds !== 'tile' || this.disabled)}
      aria-label=${partWords.slots.place(slotWords(slot), at + 1, this.places)}
      @click=${() => this.#clicked(at, id)}
      @focus=${() => this.#settle(at)}
    >
      ${slot.holds === 'tile' ? html`<wr-tile .kind=${slot.tile.kind} aria-hidden="true"></wr-tile>` : nothing}
      ${slot.holds === 'offer' ? html`<wr-tile .kind=${slot.kind} aria-hidden="true"></wr-tile>` : nothing}
      ${slot.holds === 'blind' ? html`<wr-tile .kind=${null} aria-hidden="true"></wr-tile>` : nothing}
      ${slot.holds === 'nothing' ? html`<span aria-hidden="true">${at + 1}</span>` : nothing}
    </div>`;
  }

  #settle(at: number): void {
    this.active = at;
  }

  #clicked(at: number, id: string | null): void {
    this.active = at;
    if (id !== null && !this.#drag.justDropped) this.#takeBack([id]);
  }

  #onKey(event: KeyboardEvent): void {
    const next = rove(event.key, this.active, this.places);
    if (next !== null) {
      this.active = next;
      this.focus();
    } else if (event.key === 'Delete' || event.key === 'Backspace' || event.key === 'Enter') {
      this.#takeBack(this.tiles.slice(this.active, this.active + 1).map(({ id }) => id));
    } else if (event.key === 'Escape') {
      this.#takeBack(this.tiles.map(({ id }) => id));
    } else return;
    event.preventDefault();
  }

  #takeBack(ids: readonly string[]): void {
    if (!this.disabled && ids.length > 0) emit<SlotsReturned>(this, 'slots-returned', { ids });
  }

  #dropped(id: string, at: DragPoint): void {
    this.#stopDragging();
    if (this.returnTo && isWithin(this.returnTo.getBoundingClientRect(), at)) this.#takeBack([id]);
  }

  #startDragging(id: string): void {
    const box = this.renderRoot.querySelector(`[data-slot="${CSS.escape(id)}"]`)?.getBoundingClientRect();
    this.style.setProperty('--drag-left', `${box?.left ?? 0}px`);
    this.style.setProperty('--drag-top', `${box?.top ?? 0}px`);
    this.dragging = id;
  }

  #stopDragging(): void {
    this.dragging = null;
    for (const name of ['x', 'y', 'left', 'top']) this.style.removeProperty(`--drag-${name}`);
  }
}

/** One place of the tray: a tile, one that is offered, one that is handed on unseen, or nothing yet. */
type Slot =
  | { readonly holds: 'tile'; readonly tile: RackTile }
  | { readonly holds: 'offer'; readonly kind: Kind }
  | { readonly holds: 'blind' | 'nothing' };

/** The places of a tray: the tiles first, those handed on unseen last. */
function slotsOf(tiles: readonly RackTile[], places: number, blind: number, offered: readonly Kind[]): readonly Slot[] {
  return Array.from({ length: places }, (_, at): Slot => {
    const tile = tiles[at];
    if (tile) return { holds: 'tile', tile };
    const kind = offered[at];
    if (kind !== undefined) return { holds: 'offer', kind };
    return { holds: at >= places - blind ? 'blind' : 'nothing' };
  });
}

/** What lies in one place. */
function slotWords(slot: Slot): string {
  if (slot.holds === 'tile') return nameOf(slot.tile.kind);
  if (slot.holds === 'offer') return partWords.slots.offered(nameOf(slot.kind));
  return slot.holds === 'blind' ? partWords.slots.unseen : partWords.slots.empty;
}

/** "Tiles to give: five bam, nine crak; 1 place free." */
function slotsWords(label: string, slots: readonly Slot[]): string {
  const held = slots.filter(({ holds }) => holds !== 'nothing' && holds !== 'offer').map(slotWords);
  const free = slots.length - held.length;
  const rest = free === 0 ? partWords.slots.full : partWords.slots.free(free);
  return capital(`${label}: ${[held.join(', '), rest].filter(Boolean).join('; ')}.`);
}

/** The tile in whose place something happened, by its id. */
function slotIdIn(event: Event): string | null {
  for (const node of event.composedPath()) {
    if (node instanceof HTMLElement && node.dataset['slot'] !== undefined) return node.dataset['slot'];
  }
  return null;
}

customElements.define('wr-slots', WrSlots);
