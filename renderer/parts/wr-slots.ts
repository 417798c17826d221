import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { sharedStyles } from '../tokens/shared.ts';
import { partWords } from '../words/parts.ts';
import { announce } from './announcer.ts';
import { DragController } from './drag-controller.ts';
import type { DragPoint } from './drag.ts';
import { emit } from './emit.ts';
import { isWithin } from './rack/rack-geometry.ts';
import type { RackTile } from './rack/rack-tile.ts';
import { rove } from './rove.ts';
import { type Slot, slotIdIn, slotsOf, slotsWords, slotWords } from './slot.ts';
import { slotsStyles } from './slots-styles.ts';
import './tile/wr-tile.ts';

/** What `slots-returned` carries: tiles taken back to the rack. */
export interface SlotsReturned {
  readonly ids: readonly string[];
}

/**
 * The tray of a pass: a listbox of three places (or fewer). Left, Right, Home and End move; Delete,
 * Backspace, Enter or a click takes a tile back; Escape takes all back. Sends `slots-returned`, and
 * says what lies in it whenever that changes.
 */
export class WrSlots extends LitElement {
  static override properties = {
    tiles: { attribute: false },
    places: { type: Number },
    blind: { type: Number },
    label: {},
    disabled: { type: Boolean },
    returnTo: { attribute: false },
    active: { state: true },
    dragging: { state: true },
  };

  declare tiles: readonly RackTile[];
  /** How many tiles this pass takes. */
  declare places: number;
  /** How many of them are handed on unseen. */
  declare blind: number;
  declare label: string;
  declare disabled: boolean;
  /** A tile dragged onto this element is taken back, as a click on it does. */
  declare returnTo: Element | null;
  declare protected active: number;
  declare protected dragging: string | null;

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

  constructor() {
    super();
    this.tiles = [];
    this.places = 3;
    this.blind = 0;
    this.label = partWords.slots.label;
    this.disabled = false;
    this.returnTo = null;
    this.active = 0;
    this.dragging = null;
  }

  /** Puts the focus on the place that had it last. */
  override focus(): void {
    this.#wantsFocus = true;
    this.requestUpdate();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.active = Math.min(this.active, Math.max(0, this.places - 1));
    if (!changed.has('tiles') && !changed.has('blind')) return;
    if (this.hasUpdated) announce(slotsWords(this.label, this.#slots));
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
    return slotsOf(this.tiles, this.places, this.blind);
  }

  #moving(): unknown {
    const tile = this.tiles.find(({ id }) => id === this.dragging);
    if (tile === undefined) return nothing;
    return html`<div class="moving" popover="manual" aria-hidden="true"><wr-tile .kind=${tile.kind}></wr-tile></div>`;
  }

  #slot(slot: Slot, at: number): unknown {
    const id = slot.holds === 'tile' ? slot.tile.id : null;
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

customElements.define('wr-slots', WrSlots);

declare global {
  interface HTMLElementTagNameMap {
    'wr-slots': WrSlots;
  }
}
