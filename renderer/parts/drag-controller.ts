import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { type DragEvent, type DragPoint, type DragState, dragged, IDLE } from './drag.ts';

/** What an element that lets its tiles be dragged provides, and what it is notified of. */
export interface DragClient {
  /** The id of the draggable thing that was pressed, if one was. */
  pressedId(event: PointerEvent): string | null;
  started(id: string): void;
  /** `by`: how far from where it was pressed. Called at most once a frame. */
  moved(id: string, by: DragPoint, at: DragPoint): void;
  dropped(id: string, at: DragPoint): void;
  restored(id: string): void;
}

/** Binds the drag machine to the pointer events of an element; Escape and a lost pointer restore. */
export class DragController implements ReactiveController {
  /** True from the drop until the click that the browser sends after it has passed. */
  justDropped = false;
  readonly #host: ReactiveControllerHost & HTMLElement;
  readonly #client: DragClient;
  #state: DragState = IDLE;
  #frame = 0;
  #latest: DragPoint = { x: 0, y: 0 };

  constructor(host: ReactiveControllerHost & HTMLElement, client: DragClient) {
    this.#host = host;
    this.#client = client;
    host.addController(this);
  }

  /** The id of the thing that is being dragged, or null. */
  get dragging(): string | null {
    return this.#state.phase === 'dragging' ? this.#state.id : null;
  }

  hostConnected(): void {
    this.#host.addEventListener('pointerdown', this.#onDown);
  }

  hostDisconnected(): void {
    this.#host.removeEventListener('pointerdown', this.#onDown);
    this.#take({ type: 'cancel' });
  }

  readonly #onDown = (event: PointerEvent): void => {
    const id = event.button === 0 ? this.#client.pressedId(event) : null;
    if (id === null) return;
    this.#listen();
    this.#take({ type: 'press', id, pointer: event.pointerId, at: pointOf(event) });
  };

  readonly #onMove = (event: PointerEvent): void => {
    this.#latest = pointOf(event);
    this.#take({ type: 'move', pointer: event.pointerId, at: this.#latest });
  };

  readonly #onUp = (event: PointerEvent): void => {
    this.#latest = pointOf(event);
    this.#take({ type: 'release', pointer: event.pointerId, at: this.#latest });
  };

  readonly #onCancel = (): void => this.#take({ type: 'cancel' });

  /** A finger is first captured by the tile that it touches; losing that to the element is no loss. */
  readonly #onLost = (event: PointerEvent): void => {
    if (event.composedPath()[0] === this.#host) this.#take({ type: 'cancel' });
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || this.dragging === null) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    this.#take({ type: 'cancel' });
  };

  #take(event: DragEvent): void {
    const before = this.#state;
    const { state, effect } = dragged(before, event);
    this.#state = state;
    if (before.phase !== 'idle') {
      if (effect === 'start') this.#start(before.id, before.pointer);
      if (effect === 'start' || effect === 'move') this.#followSoon();
      if (effect === 'drop') this.#drop(before.id);
      if (effect === 'restore') this.#client.restored(before.id);
    }
    if (state.phase === 'idle') this.#unlisten();
  }

  #start(id: string, pointer: number): void {
    this.#host.setPointerCapture(pointer);
    this.#client.started(id);
  }

  #followSoon(): void {
    if (this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      const state = this.#state;
      if (state.phase !== 'dragging') return;
      const at = this.#latest;
      this.#client.moved(state.id, { x: at.x - state.from.x, y: at.y - state.from.y }, at);
    });
  }

  #drop(id: string): void {
    this.justDropped = true;
    setTimeout(() => {
      this.justDropped = false;
    });
    this.#client.dropped(id, this.#latest);
  }

  // On the window, so that a quick hand that leaves the element before the drag starts is still followed.
  #listen(): void {
    window.addEventListener('pointermove', this.#onMove);
    window.addEventListener('pointerup', this.#onUp);
    window.addEventListener('pointercancel', this.#onCancel);
    window.addEventListener('blur', this.#onCancel);
    window.addEventListener('keydown', this.#onKey, { capture: true });
    this.#host.addEventListener('lostpointercapture', this.#onLost);
  }

  #unlisten(): void {
    window.removeEventListener('pointermove', this.#onMove);
    window.removeEventListener('pointerup', this.#onUp);
    window.removeEventListener('pointercancel', this.#onCancel);
    window.removeEventListener('blur', this.#onCancel);
    window.removeEventListener('keydown', this.#onKey, { capture: true });
    this.#host.removeEventListener('lostpointercapture', this.#onLost);
  }
}

function pointOf(event: PointerEvent): DragPoint {
  return { x: event.clientX, y: event.clientY };
}
