import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Something that calls back after every change. */
export interface Subscribable {
  /** Returns the way to stop the calls. */
  subscribe(listener: () => void): () => void;
}

/** Draws an element again whenever one of its stores changes, while it is on the page. */
export class StoreController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #stores: () => readonly Subscribable[];
  #stops: readonly (() => void)[] = [];

  /** `stores` is asked when the element comes onto the page, when its properties are set. */
  constructor(host: ReactiveControllerHost, stores: () => readonly Subscribable[]) {
    this.#host = host;
    this.#stores = stores;
    host.addController(this);
  }

  hostConnected(): void {
    this.#stops = this.#stores().map((store) => store.subscribe(() => this.#host.requestUpdate()));
  }

  hostDisconnected(): void {
    for (const stop of this.#stops) stop();
    this.#stops = [];
  }
}
