import type { LitElement } from 'lit';
import { DragController } from '../drag-controller.ts';
import type { DragPoint } from '../drag.ts';
import { isWithin } from './rack-geometry.ts';
import type { RackLayout, RackPlace } from './rack-layout.ts';
import { placeUnder, tileIdIn } from './rack-measure.ts';

/** How far beside the rack a tile may be let go and still be put into it, in px. */
const CATCH = 60;

/** The rack, as far as a pointer has to do with it. */
export interface PointedRack extends LitElement {
  readonly layout: RackLayout;
  /** The tiles chosen, by id. */
  readonly selected: readonly string[];
  /** A tile let go over this element is sent. */
  readonly sendTo: Element | null;
  /** A tile as drawn, by its id. */
  drawn(id: string | null): HTMLElement | null;
  /** Puts tiles into a place. */
  put(ids: readonly string[], place: RackPlace): void;
  /** Sends a tile. */
  sendTile(id: string): void;
}

/** What a pointer does over a rack: which place it means, and a tile that it drags. */
export class RackPointer {
  readonly #rack: PointedRack;
  readonly #drag: DragController;
  #meant: RackPlace | null = null;
  #dragging: string | null = null;

  constructor(rack: PointedRack) {
    this.#rack = rack;
    this.#drag = new DragController(rack, {
      pressedId: (event) => tileIdIn(event),
      started: (id) => this.#set(id, null),
      moved: (id, by, at) => this.#follow(id, by, at),
      dropped: (id, at) => this.#dropped(id, at),
      restored: () => this.#stop(),
    });
  }

  /** The place that the pointer means. */
  get meant(): RackPlace | null {
    return this.#meant;
  }

  /** The tile that is being dragged. */
  get dragging(): string | null {
    return this.#dragging;
  }

  /** A click that only ends a drag is none. */
  get justDropped(): boolean {
    return this.#drag.justDropped;
  }

  /** A click beside the tiles while some are chosen: the place that it means. */
  takePlace({ clientX, clientY }: MouseEvent): RackPlace | null {
    this.#mean(null);
    return this.#rack.selected.length > 0 ? this.#placeAt({ x: clientX, y: clientY }) : null;
  }

  /** Follows a mouse that may be about to click. */
  hover(event: PointerEvent): void {
    if (this.#dragging !== null || this.#rack.selected.length === 0 || event.pointerType === 'touch') return;
    this.#mean(tileIdIn(event) === null ? this.#placeAt({ x: event.clientX, y: event.clientY }) : null);
  }

  leave(): void {
    if (this.#dragging === null) this.#mean(null);
  }

  /** Reads where things are before it writes, so that the browser lays out once a frame. */
  #follow(id: string, by: DragPoint, at: DragPoint): void {
    const far = this.#isOverTarget(at) || !this.#isNear(at);
    this.#mean(far ? null : this.#placeAt(at));
    const tile = this.#rack.drawn(id);
    tile?.style.setProperty('--drag-x', `${by.x}px`);
    tile?.style.setProperty('--drag-y', `${by.y}px`);
  }

  #dropped(id: string, at: DragPoint): void {
    const target = this.#isOverTarget(at);
    const place = !target && this.#isNear(at) ? this.#placeAt(at) : null;
    this.#stop();
    if (target) this.#rack.sendTile(id);
    else if (place) this.#rack.put([id], place);
  }

  #stop(): void {
    const tile = this.#rack.drawn(this.#dragging);
    tile?.style.removeProperty('--drag-x');
    tile?.style.removeProperty('--drag-y');
    this.#set(null, null);
  }

  #isOverTarget(at: DragPoint): boolean {
    const { sendTo } = this.#rack;
    return sendTo !== null && isWithin(sendTo.getBoundingClientRect(), at);
  }

  #isNear(at: DragPoint): boolean {
    return isWithin(this.#rack.getBoundingClientRect(), at, CATCH);
  }

  #placeAt(point: DragPoint): RackPlace | null {
    return placeUnder(this.#rack.renderRoot, this.#rack.layout, point);
  }

  #mean(place: RackPlace | null): void {
    if (JSON.stringify(place) !== JSON.stringify(this.#meant)) this.#set(this.#dragging, place);
  }

  #set(dragging: string | null, meant: RackPlace | null): void {
    this.#dragging = dragging;
    this.#meant = meant;
    this.#rack.requestUpdate();
  }
}
